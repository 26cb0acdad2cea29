"""A first start makes all that is needed, a second one is quick, and trouble is a sentence."""

import ast
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from app import setup_environment, setup_screen, setup_system, start
from app.setup_system import CannotStart
from tests import run
from tests.run import SCREENS, all_tests, offer_browser, virtual_screen, virtual_screens

NOTHING: dict[str, list[str]] = {"run": []}

linux_only = pytest.mark.skipif(sys.platform != "linux", reason="display servers are Linux's")


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    place = tmp_path_factory.mktemp("made") / "environment"
    setup_environment.prepare(NOTHING, [place])
    return place


def started(*arguments: str, home: Path) -> subprocess.CompletedProcess[str]:
    """Bedwright as a maker starts it, in another folder and without a screen."""
    screens = {"DISPLAY", "WAYLAND_DISPLAY"}
    without_screen = {key: value for key, value in os.environ.items() if key not in screens}
    return subprocess.run(
        [sys.executable, str(start.ROOT / "app" / "start.py"), *arguments],
        cwd=home,
        env=without_screen | {"HOME": str(home), "USERPROFILE": str(home)},
        capture_output=True,
        text=True,
    )


def test_an_environment_has_a_python_of_its_own(made: Path) -> None:
    ask = [str(setup_environment.python_of(made)), "-c", "import sys; print(sys.prefix)"]

    said = subprocess.run(ask, capture_output=True, text=True, check=True).stdout

    assert Path(said.strip()).resolve() == made.resolve()


def test_a_second_start_sets_nothing_up(made: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = (made / setup_environment.MARK).stat().st_mtime_ns

    setup_environment.prepare(NOTHING, [made])

    assert (made / setup_environment.MARK).stat().st_mtime_ns == before
    assert capsys.readouterr().err == ""


def test_a_changed_package_list_is_noticed(made: Path) -> None:
    assert setup_environment.is_whole(made, NOTHING)
    assert not setup_environment.is_whole(made, {"run": ["one-more"]})


def test_test_tools_are_asked_for_only_by_the_tests() -> None:
    assert setup_environment.wishes().keys() == {"run"}
    assert setup_environment.wishes(with_tests=True).keys() == {"run", "tests"}


def test_an_environment_whose_python_was_swapped_counts_as_broken(made: Path) -> None:
    mark = setup_environment.read_mark(made)

    assert setup_environment.is_sound(made, mark)
    assert not setup_environment.is_sound(made, mark | {"python": "3.1"})


def test_a_set_up_that_broke_off_is_done_again_from_scratch(tmp_path: Path) -> None:
    place = tmp_path / "environment"
    (place / "lib").mkdir(parents=True)
    (place / "lib" / "half.py").touch()
    setup_environment.write_mark(place, {})

    setup_environment.prepare(NOTHING, [place])

    assert not (place / "lib" / "half.py").exists()
    assert setup_environment.is_whole(place, NOTHING)


def test_an_environment_of_someone_else_is_left_alone(made: Path, tmp_path: Path) -> None:
    theirs = tmp_path / ".venv"
    theirs.mkdir()
    (theirs / "pyvenv.cfg").touch()

    python = setup_environment.prepare(NOTHING, [theirs, made])

    assert python == setup_environment.python_of(made)
    assert setup_environment.first_usable([theirs, made]) == made
    assert [each.name for each in theirs.iterdir()] == ["pyvenv.cfg"]


def test_no_place_to_write_is_a_sentence(tmp_path: Path) -> None:
    (tmp_path / "file").touch()

    with pytest.raises(CannotStart, match="Allow writing"):
        setup_environment.first_usable([tmp_path / "file" / "environment"])


def test_no_network_is_a_sentence_and_leaves_nothing_that_counts_as_whole(
    made: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PIP_INDEX_URL", "http://127.0.0.1:9/simple")  # where nobody listens
    monkeypatch.delenv("PIP_FIND_LINKS", raising=False)
    place = shutil.copytree(made, tmp_path / "environment", symlinks=True)
    wanted = {"run": ["bedwright-needs-a-network"]}

    with pytest.raises(CannotStart, match="network or the package index did not answer"):
        setup_environment.prepare(wanted, [place])

    assert not setup_environment.is_whole(place, wanted)
    assert not setup_environment.is_whole(place, NOTHING)


def test_a_full_disk_is_a_sentence() -> None:
    said = "ERROR: Could not install packages: [Errno 28] No space left on device"

    assert "Make room" in setup_environment.why_not_installed(said)


def test_what_pip_says_is_shown_when_the_reason_is_not_known() -> None:
    assert "one odd wheel" in setup_environment.why_not_installed("ERROR: one odd wheel")


def test_a_missing_library_is_installed_on_debian_by_root(monkeypatch: pytest.MonkeyPatch) -> None:
    """The package list of a fresh system is empty: the first try fails, and is made again."""
    asked: list[str] = []

    def apt(arguments: list[str]) -> subprocess.CompletedProcess[str]:
        asked.append(" ".join(arguments))
        return subprocess.CompletedProcess(arguments, returncode=100 if len(asked) == 1 else 0)

    pretend(monkeypatch, root=True, debian=True)
    monkeypatch.setattr(setup_system, "apt", apt)
    setup_system.need({"libEGL.so.1": "libegl1"})

    install = "install -y --no-install-recommends libegl1"
    assert asked == [install, "update", install]


def test_a_missing_library_is_named_with_its_command_to_others(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    pretend(monkeypatch, root=False, debian=True)

    with pytest.raises(CannotStart, match="sudo apt-get install .* libegl1"):
        setup_system.need({"libEGL.so.1": "libegl1"})


def test_a_missing_library_is_named_on_other_systems(monkeypatch: pytest.MonkeyPatch) -> None:
    pretend(monkeypatch, root=True, debian=False)

    with pytest.raises(CannotStart, match="lacks libEGL.so.1"):
        setup_system.need({"libEGL.so.1": "libegl1"})


def test_tests_run_without_a_browser_and_say_which_do_not(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    pretend(monkeypatch, root=False, debian=True)
    monkeypatch.setattr(setup_system.shutil, "which", lambda name: None)

    offer_browser()

    said = capsys.readouterr().err
    assert "sudo apt-get install -y --no-install-recommends chromium chromium-driver" in said
    assert "the tests that open the client's page in a browser are skipped" in said


def test_what_the_system_lacks_stops_the_tests_though_the_packages_are_there(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def lack() -> None:
        raise CannotStart("This system lacks Xvfb.")

    monkeypatch.setattr(run, "need_system", lack)
    monkeypatch.setattr(run, "prepare", lambda wanted, choices: Path(sys.executable))

    with pytest.raises(CannotStart, match="lacks Xvfb"):
        run.set_up()


def pretend(monkeypatch: pytest.MonkeyPatch, *, root: bool, debian: bool) -> None:
    monkeypatch.setattr(setup_system, "is_root", lambda: root)
    monkeypatch.setattr(setup_system, "has_apt", lambda: debian)


def test_a_library_that_is_there_loads_and_another_does_not() -> None:
    assert not setup_system.loads("libbedwright-is-no-library.so.1")


@linux_only
def test_a_screen_that_answers_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("WAYLAND_DISPLAY", raising=False)
    with virtual_screen() as where:
        monkeypatch.setenv("DISPLAY", where["DISPLAY"])

        assert setup_screen.has_screen()
        assert setup_screen._listens(where["DISPLAY"])  # before the library is installed


@linux_only
def test_each_process_of_tests_has_a_screen_of_its_own() -> None:
    """Two windows on one screen take each other's focus."""
    with virtual_screens(3) as where:
        names = where[SCREENS].split()

        assert where["DISPLAY"] == names[0]
        assert len(set(names)) == 3
        assert all(setup_screen._listens(name) for name in names)


def test_without_screens_of_their_own_windows_are_opened_one_at_a_time() -> None:
    together = all_tests({SCREENS: ":1 :2"})
    apart = all_tests({})

    assert [("-n" in each, "tests/app" in each) for each in together] == [(True, False)]
    assert [("-n" in each, "--ignore" in each) for each in apart] == [(True, True), (False, False)]
    assert apart[0][apart[0].index("--ignore") + 1] == apart[1][-1] == "tests/app"


@linux_only
@pytest.mark.parametrize("name", ["", ":4711", "no display"])
def test_a_screen_that_does_not_answer_is_none(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("DISPLAY", name)
    monkeypatch.setenv("WAYLAND_DISPLAY", "wayland-4711")

    assert not setup_screen.has_screen()
    assert not setup_screen._listens(name)


@pytest.mark.parametrize(
    ("arguments", "expected"),
    [([], True), (["window", "a.bedwright"], True), (["window", "--help"], False)]
    + [([name], False) for name in ("new", "check", "plan", "why", "--help")],
)
def test_only_the_window_needs_a_screen(arguments: list[str], expected: bool) -> None:
    assert start.wants_window(arguments) is expected


def test_an_old_python_gets_as_far_as_the_sentence_that_names_the_new_one() -> None:
    source = (start.ROOT / "app" / "start.py").read_text(encoding="utf-8")

    ast.parse(source, feature_version=(3, 8))

    assert source.index("needs Python 3.11") < source.index("from app.")


def test_arguments_pass_on_to_the_command_line(tmp_path: Path) -> None:
    done = started("check", "no such.bedwright", home=tmp_path)

    assert done.returncode == 2
    assert "no such.bedwright" in done.stderr


@linux_only
def test_without_a_screen_the_demo_bed_is_planned_and_its_place_told(tmp_path: Path) -> None:
    done = started(home=tmp_path)

    assert done.returncode == 0, done.stderr
    assert "There is no screen here" in done.stderr
    assert str(tmp_path / "bedwright-demo-plan") in done.stdout
    assert (tmp_path / "bedwright-demo-plan" / "summary.json").exists()


@linux_only
def test_without_a_screen_a_window_is_refused_with_a_sentence(tmp_path: Path) -> None:
    done = started("window", home=tmp_path)

    assert done.returncode == 1
    assert done.stderr.startswith("There is no screen here, so no window can open.")
