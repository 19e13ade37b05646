"""Files of our own that were damaged at random are read, or told in one sentence; nothing else comes of them."""

import random
from contextlib import suppress

import pytest
from tracing import PLAIN
from zoo import WOMAN

import draft
from draft.errors import DraftError
from draft.trace import read_dxf, read_svg

READERS = {"svg": read_svg, "dxf": read_dxf}


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    folder = tmp_path_factory.mktemp("whole")
    pattern = draft.shorts(WOMAN, PLAIN)
    paths = {"svg": pattern.save_svg(folder / "one.svg"), "dxf": pattern.save_dxf(folder / "one.dxf")}
    return {kind: path.read_bytes() for kind, path in paths.items()}


def damaged(content, seed):
    rng = random.Random(seed)
    data = bytearray(content)
    for _ in range(rng.choice((1, 2, 8))):
        at = rng.randrange(len(data) - 300)
        kind = rng.randrange(4)
        if kind == 0:
            data[at] = rng.randrange(256)
        elif kind == 1:
            data[at] = ord(rng.choice('0123456789.-eMLCZ<>/"'))
        elif kind == 2:
            del data[at : at + rng.randrange(1, 40)]
        else:
            data[at:at] = data[at : at + rng.randrange(1, 40)]
    return bytes(data)


@pytest.mark.parametrize("seed", range(20))
@pytest.mark.parametrize("kind", READERS)
def test_damage_is_read_or_told(tmp_path, files, kind, seed):
    file = tmp_path / f"damaged.{kind}"
    file.write_bytes(damaged(files[kind], seed))
    with suppress(DraftError):
        assert all(outline.area > 0 for outline in READERS[kind](file))


@pytest.mark.parametrize("kind", READERS)
@pytest.mark.parametrize("share", [0.01, 0.3, 0.7, 0.999])
def test_a_file_that_stops_early_is_told(tmp_path, files, kind, share):
    file = tmp_path / f"short.{kind}"
    file.write_bytes(files[kind][: int(share * len(files[kind]))])
    with pytest.raises(DraftError):
        READERS[kind](file)
