"""The draft's page, as a browser without scripts meets it and as htmx does."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.db import connection
from django.test import Client, RequestFactory
from studio_page import Page, Press

from frogless import draft
from frogless.studio import guard
from frogless.studio.drafting import views
from frogless.studio.examples import example_designs, examples, folder
from frogless.studio.library import shelf

HTMX = {"HX-Request": "true", "host": "localhost"}


def upload(text: str | bytes, name: str = "mine.toml") -> SimpleUploadedFile:
    """A file as a form sends it."""
    return SimpleUploadedFile(name, text.encode() if isinstance(text, str) else text)


def test_first_page_asks_for_what_the_design_needs(client: Client) -> None:
    """Every example can be chosen; nothing is wrong yet; what is needed is linked to its field."""
    response = client.get("/")
    page = Page(response)
    assert response.status_code == 200
    for design in example_designs().values():
        assert design.title in page.text
    assert "Still needed" in page.text
    assert {"#body-hip_girth", "#body-waist_girth", "#swatch-hook"} <= set(page.links)
    assert not any(sentence for id_, sentence in page.texts.items() if id_.endswith("-error"))


def test_fields_say_how_they_are_taken_and_which_are_needed(client: Client) -> None:
    """Required ones say so; estimated ones say that; the high hip says why it matters."""
    page = Page(client.get("/"))
    assert page.texts["body-hip_girth-hint"] == "Level, where the seat is fullest."
    assert "Estimated from a survey" in page.texts["body-waist_to_hip-hint"]
    assert "skirts fail first" in page.texts["body-high_hip_girth-hint"]
    assert page.attributes["body-hip_girth"]["aria-describedby"].split()[0] == "body-hip_girth-hint"


def test_page_shows_what_the_pipeline_drafts(filled: Page) -> None:
    """Counts, girths and checks are those of the same three files on the command line."""
    where = folder()
    made = draft.draft(
        draft.Request(
            where / "ring-dance-skirt/design.toml",
            where / "bodies/dancer-3.toml",
            (where / "swatches/light-cotton.toml",),
        )
    ).drafted
    for mark in made.plan.main.landmarks:
        assert f" {mark.count} " in filled.text
    assert f"Drafted and proven: {made.plan.main.landmarks[0].count} stitches" in filled.text
    assert "Schematic" in filled.text
    assert filled.html.count('src="data:image/svg+xml;base64,') == 2
    assert "shaping points on round" in filled.text


def test_journey_without_scripts(client: Client, press: Press, tmp_path: Path) -> None:
    """Fill in, draft, change the design, mend what is new, take the pattern home."""
    page = press(Page(client.get("/")), "draft", design="example:ring-dance-skirt")
    assert page.error("body-hip_girth") == "is needed"
    assert page.attributes["body-hip_girth"]["aria-invalid"] == "true"
    sizes = {"body-waist_girth": "72", "body-hip_girth": "101", "swatch-hook": "3,75"}
    read = {"stitches": "27", "width": "15.0", "rows": "15", "height": "15.8"}
    sizes |= {f"swatch-double_crochet-{part}": value for part, value in read.items()}
    page = press(page, "draft", **sizes)
    assert "Drafted and proven" in page.text
    page = press(page, "draft", design="example:whirl-skirt")
    assert page.error("swatch-half_double_crochet-stitches") == "is needed"
    assert page.fields["swatch-double_crochet-stitches"] == "27"
    read = {"stitches": "26", "width": "15.2", "rows": "19", "height": "15.1"}
    half = {f"swatch-half_double_crochet-{part}": value for part, value in read.items()}
    page = press(page, "draft", **half)
    assert "Drafted and proven" in page.text
    answer = client.post("/draft/pattern.txt", page.fields)
    assert b"Whirl skirt" in answer.content


def test_faults_stand_beside_their_fields(filled: Page, press: Press) -> None:
    """Several are told together, each in its place and again in the list with a link."""
    page = press(
        filled,
        "draft",
        **{
            "body-waist_girth": "72 cn",
            "body-hip_girth": "10",
            "swatch-double_crochet-width": "wide",
            "swatch-single_crochet-rows": "many",
        },
    )
    assert "no unit for a length" in page.error("body-waist_girth")
    assert '"wide" is not a length' in page.error("swatch-double_crochet-width")
    assert 'must be a number, not "many"' in page.error("swatch-single_crochet-rows")
    for name in ("body-waist_girth", "swatch-double_crochet-width", "swatch-single_crochet-rows"):
        assert page.attributes[name]["aria-invalid"] == "true"
        assert f"#{name}" in page.links
    assert "Drafted and proven" not in page.text
    page = press(page, "draft", **{"body-waist_girth": "72"})
    assert "is no hip girth that a body has" in page.error("body-hip_girth")


def test_zero_is_refused_and_not_taken_as_empty(filled: Page, press: Press) -> None:
    """A count of 0 is a slip."""
    page = press(filled, "draft", **{"swatch-double_crochet-stitches": "0"})
    assert "must be more than 0" in page.error("swatch-double_crochet-stitches")


def test_what_cannot_be_is_told_with_the_ways_out(filled: Page, press: Press) -> None:
    """A skirt that is too narrow to put on says what would make it possible."""
    text = examples("design")["ring-dance-skirt"].text.replace(
        'opening = "max(waist_girth + 2 cm, hip_girth / 1.2)"', 'opening = "waist_girth - 8 cm"'
    )
    page = press(filled, "draft", design="text", design_text=text)
    assert "it does not go on" in page.error("design_text")
    assert "What would make it possible" in page.text


def test_faulty_design_says_the_line(filled: Page, press: Press) -> None:
    """A design of one's own is mended in its text; the rest of the form stays."""
    text = examples("design")["ring-dance-skirt"].text.replace("turning_chain =", "turning_chian =")
    page = press(filled, "draft", design="text", design_text=text)
    assert 'unknown key "turning_chian"' in page.error("design_text")
    assert page.error("design_text").startswith("line ")
    assert "; line " in page.error("design_text")
    assert page.fields["design_text"] == text
    assert page.fields["body-hip_girth"] == "101"


@pytest.mark.parametrize("name", ["example:nope", "library:1", "library:x", "", "../../etc/passwd"])
def test_design_that_is_not_there_is_told(filled: Page, press: Press, name: str) -> None:
    """No name finds anything but an example or a document of the library."""
    page = press(filled, "draft", design=name)
    assert page.error("design") == "this design is not there any more; choose another"


@pytest.mark.parametrize(
    ("name", "kind", "begins"),
    [
        ("pattern.html", "text/html; charset=utf-8", b"<!DOCTYPE html>"),
        ("pattern.pdf", "application/pdf", b"%PDF"),
        ("pattern.txt", "text/plain; charset=utf-8", b""),
        ("plan.json", "application/json", b"{"),
        ("body.toml", "application/toml", b"format"),
        ("swatch.toml", "application/toml", b"format"),
        ("design.toml", "application/toml", b"#"),
    ],
)
def test_every_file_can_be_taken(
    client: Client, filled: Page, name: str, kind: str, begins: bytes
) -> None:
    """Each with its own kind; all but the page are saved under their name."""
    answer = client.post(f"/draft/{name}", filled.fields)
    assert answer.status_code == 200
    assert answer.headers["Content-Type"] == kind
    assert answer.content.startswith(begins)
    saved = answer.headers.get("Content-Disposition", "")
    assert saved == ("" if name == "pattern.html" else f'attachment; filename="{name}"')


def test_plan_is_that_of_the_form(client: Client, filled: Page) -> None:
    """The plan file says who it is for."""
    plan = json.loads(client.post("/draft/plan.json", filled.fields).content)
    assert plan["title"] == "Ring dance skirt"


def test_inches_give_inches_and_a_letter_page(client: Client, filled: Page, press: Press) -> None:
    """What was written keeps its unit; results and paper follow the choice."""
    page = press(filled, "draft", units="in", terms="uk")
    assert page.fields["body-waist_girth"] == "72 cm"
    assert "101 cm" in page.fields["body-hip_girth"]
    assert " in" in page.text
    sheet = client.post("/draft/pattern.pdf", page.fields).content
    assert sheet.startswith(b"%PDF")
    back = press(page, "draft", units="cm", terms="us")
    assert back.fields == filled.fields


def test_file_is_not_made_of_a_form_with_faults(client: Client, filled: Page) -> None:
    """The page comes back with the fault instead; the body can be saved all the same."""
    fields = {**filled.fields, "body-hip_girth": ""}
    answer = client.post("/draft/pattern.pdf", fields)
    assert answer.status_code == 422
    assert Page(answer).error("body-hip_girth") == "is needed"
    assert client.post("/draft/body.toml", fields).status_code == 200


def test_file_without_a_form_leads_to_the_draft(client: Client) -> None:
    """Somebody who reloads the tab of a pattern is not left with nothing."""
    assert client.get("/draft/pattern.pdf").headers["Location"] == "/"
    assert client.get("/draft/passwd").status_code == 404
    assert client.post("/draft/passwd").status_code == 404


@pytest.mark.parametrize("kind", ["body", "swatch"])
def test_file_fills_the_fields_and_comes_out_the_same(
    client: Client, press: Press, kind: str
) -> None:
    """Every example goes through the form unharmed."""
    for example in examples(kind).values():
        page = press(Page(client.get("/")), "open", **{f"{kind}_file": upload(example.text)})
        assert page.fields.get(f"{kind}_text", "") == ""
        assert page.fields[f"{kind}-name"] == example.title
        saved = client.post(f"/draft/{kind}.toml", page.fields).content.decode()
        assert tomllib.loads(saved)["name"] == example.title


def test_file_with_more_than_the_fields_hold_is_kept_as_text(client: Client, press: Press) -> None:
    """Two readings of one stitch: nothing is lost, and it can be saved as it was."""
    text = examples("swatch")["light-cotton"].text
    text += '[[reading]]\nstate = "washed"\nstitches = 26\nwidth = "14.4 cm"\n'
    page = press(Page(client.get("/")), "open", swatch_file=upload(text))
    assert page.fields["swatch_text"] == text
    assert "kept as text" in page.text
    assert client.post("/draft/swatch.toml", page.fields).content.decode() == text
    page = press(page, "load-body", body_pick="example:dancer-3")
    page = press(page, "draft", design="example:ring-dance-skirt")
    assert "Drafted and proven" in page.text
    page = press(page, "fields-swatch")
    assert page.error("swatch-hook") == ""
    assert "swatch_text" not in page.fields


def test_faulty_file_is_kept_as_text_with_its_fault(client: Client, press: Press) -> None:
    """It is told with its line, and can be mended in place."""
    text = 'format = "frogless-body/1"\nname = "A"\n[measurements]\nhip_grith = "101 cm"\n'
    page = press(Page(client.get("/")), "open", body_file=upload(text))
    assert page.fields["body_text"] == text
    assert 'did you mean "hip_girth"' in page.error("body_text")
    assert page.error("body_text").startswith("line 4")


def test_design_file_becomes_the_own_text(client: Client, press: Press) -> None:
    """It is chosen at once."""
    text = examples("design")["whirl-skirt"].text
    page = press(Page(client.get("/")), "open", design_file=upload(text))
    assert (page.fields["design"], page.fields["design_text"]) == ("text", text)


def test_example_can_be_copied_to_be_changed(client: Client, press: Press) -> None:
    """The text is that of the chosen design."""
    page = press(Page(client.get("/")), "edit-design", design="example:whirl-skirt")
    assert page.fields["design_text"] == examples("design")["whirl-skirt"].text
    assert page.fields["design"] == "text"


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (b"x" * (views.LARGEST_FILE + 1), "at most"),
        (b"\xff\xfe\x00", "is not text"),
    ],
)
def test_file_that_is_none_of_ours_is_refused(
    filled: Page, press: Press, content: bytes, told: str
) -> None:
    """One sentence; the form stays as it was."""
    page = press(filled, "open", body_file=upload(content, "photo.jpg"))
    assert "The file photo.jpg" in page.text
    assert told in page.text
    assert page.fields == filled.fields


def test_too_much_is_refused_before_it_is_read(client: Client) -> None:
    """A page says so."""
    answer = client.post("/", {"body_file": upload(b"x" * 1_000_001)})
    assert answer.status_code == 413
    assert "more than the studio takes" in Page(answer).text


@pytest.mark.parametrize("host", ["frogless.example", "localhost.frogless.example", "192.0.2.1"])
def test_other_host_is_refused(client: Client, host: str) -> None:
    """A page elsewhere cannot have its name lead here."""
    answer = client.get("/", headers={"host": host})
    assert answer.status_code == 400
    assert Page(answer).fields == {}


@pytest.mark.parametrize("path", ["/", "/draft/body.toml", "/library/1/delete"])
def test_form_from_elsewhere_is_refused(path: str) -> None:
    """Without the page's own token nothing is done."""
    answer = Client(headers={"host": "localhost"}, enforce_csrf_checks=True).post(path, {})
    assert answer.status_code == 403
    assert "did not come from a page of this studio" in Page(answer).text


def test_pages_may_load_nothing_from_elsewhere(client: Client, filled: Page) -> None:
    """Page and pattern each carry their policy; nothing is kept in the browser's cache."""
    page = client.get("/")
    assert page.headers["Content-Security-Policy"].startswith(
        "default-src 'none'; script-src 'self'"
    )
    assert page.headers["Cache-Control"] == "no-store"
    pattern = client.post("/draft/pattern.html", filled.fields)
    assert "script-src" not in pattern.headers["Content-Security-Policy"]
    assert pattern.headers["Content-Security-Policy"].startswith("default-src 'none'")
    assert client.get("/nowhere").status_code == 404


def test_text_is_never_markup(filled: Page, press: Press) -> None:
    """A name with signs of HTML in it is shown as it was written."""
    page = press(filled, "draft", **{"body-name": '<script>alert("x")</script>'})
    assert "<script>alert" not in page.html
    assert page.fields["body-name"] == '<script>alert("x")</script>'


def test_change_brings_the_result_and_the_faults_alone(client: Client, filled: Page) -> None:
    """For htmx: no form, so that nothing is overwritten that is being typed."""
    data = {**filled.fields, "body-hip_girth": "102 cn"}
    page = Page(client.post("/", data, headers=HTMX))
    assert "body-hip_girth" not in page.fields
    assert "no unit for a length" in page.error("body-hip_girth")
    assert page.error("body-waist_girth") == ""
    assert page.texts["status"].startswith("1 to mend: Hip girth")
    page = Page(client.post("/", filled.fields, headers=HTMX))
    assert page.texts["status"].startswith("Drafted and proven")


def test_empty_fields_are_no_faults_while_the_form_is_filled_in(client: Client) -> None:
    """After a change they are listed as needed; only the button makes faults of them."""
    fields = {**Page(client.get("/")).fields, "body-waist_girth": "72"}
    page = Page(client.post("/", fields, headers=HTMX))
    assert "#body-hip_girth" in page.links
    assert "#body-waist_girth" not in page.links
    assert page.error("body-hip_girth") == ""


def test_form_is_shown_anew_when_its_fields_change(client: Client, filled: Page) -> None:
    """Another design may need other stitches; another unit stands beside other numbers."""
    for change in ({"design": "example:whirl-skirt"}, {"units": "in"}):
        answer = client.post("/", {**filled.fields, **change}, headers=HTMX)
        assert answer.headers["HX-Retarget"] == "#draft"
        assert Page(answer).fields["body-name"] == "Dancer 3"


def test_form_is_there_again_after_the_browser_was_closed(client: Client, filled: Page) -> None:
    """What was sent last is shown, drafted."""
    page = Page(client.get("/"))
    assert page.fields == filled.fields
    assert "Drafted and proven" in page.text


def test_form_can_be_cleared(client: Client, filled: Page, press: Press) -> None:
    """Nothing of it is kept."""
    press(filled, "clear")
    assert Page(client.get("/")).fields["body-hip_girth"] == ""
    assert shelf.kept() is None


def test_library_that_cannot_be_written_costs_the_memory_only(filled: Page, press: Press) -> None:
    """The draft is there all the same, and the page says what was not kept."""
    with connection.cursor() as cursor:
        cursor.execute("PRAGMA query_only = ON")
    page = press(filled, "draft")
    connection.close()
    assert "could not be kept" in page.text
    assert "Drafted and proven" in page.text


def test_saved_parts_can_be_filled_in_again(client: Client, filled: Page, press: Press) -> None:
    """Each of the three under its own name; the library's design can be chosen."""
    for kind in ("body", "swatch", "design"):
        page = press(filled, f"save-{kind}")
        assert "is in the library" in page.text
    (body,) = shelf.documents("body")
    (design,) = shelf.documents("design")
    assert (body.name, design.name) == ("Dancer 3", "Ring dance skirt")
    assert page.fields["design"] == f"library:{design.pk}"
    page = press(Page(client.get("/")), "clear")
    page = press(page, "load-body", body_pick=f"library:{body.pk}")
    assert page.fields["body-hip_girth"] == "101"
    page = press(page, "load-swatch", swatch_pick="example:light-cotton")
    page = press(page, "draft", design=f"library:{design.pk}")
    assert "Drafted and proven" in page.text


def test_nothing_is_saved_without_a_name(filled: Page, press: Press) -> None:
    """One sentence says why."""
    page = press(filled, "save-body", **{"body-name": " "})
    assert "A name is needed" in page.text
    page = press(filled, "save-design", design="text", design_text="not = = toml")
    assert "not valid TOML" in page.text
    assert not shelf.documents("body").exists()
    assert not shelf.documents("design").exists()


@pytest.mark.parametrize("do", ["load-body", "load-design", "fly-body", "save-cat", "load-"])
def test_button_that_asks_for_nothing_changes_nothing(filled: Page, press: Press, do: str) -> None:
    """The page stands as it was."""
    assert press(filled, do).fields == filled.fields


def test_design_that_was_deleted_is_not_drafted_any_more(filled: Page, press: Press) -> None:
    """The page says so; brought back, it is there again."""
    page = press(filled, "save-design")
    (design,) = shelf.documents("design")
    shelf.remove(design)
    assert "not there any more" in press(page, "draft").error("design")
    shelf.bring_back(design)
    page = press(page, "draft", design=f"library:{design.pk}")
    assert "Drafted and proven" in page.text


def test_warnings_name_measurements_as_the_form_does(filled: Page, press: Press) -> None:
    """No key of a file stands in them."""
    page = press(filled, "draft", **{"body-high_hip_girth": "", "body-waist_to_knee": "80"})
    assert "high hip was not measured" in page.text
    assert "Waist to knee 80 cm lies outside" in page.text


def test_cautions_come_first_and_nothing_is_told_twice(filled: Page, press: Press) -> None:
    """What can hurt stands above what is made; a warning is not repeated below."""
    page = press(filled, "draft", **{"body-high_hip_girth": ""})
    assert page.text.index("Please read first") < page.text.index("At a glance")
    assert "strand that hangs free" in page.text
    assert page.text.count("igh hip was not measured") == 1
    assert page.text.count("has to stretch 20 %") == 1


def test_estimates_are_told_above_the_draft(filled: Page, press: Press) -> None:
    """What stood in for a measurement, with its value, once."""
    page = press(filled, "draft", **{"body-waist_to_hip": "", "body-high_hip_girth": ""})
    told = "Estimated, not measured: waist to hip"
    assert page.text.count(told) == 1
    assert page.text.index(told) < page.text.index("At a glance")


def test_library_takes_no_name_from_a_faulty_text(filled: Page, press: Press) -> None:
    """The fault is told in plain words."""
    page = press(filled, "save-design", design="text", design_text="title = \u201cMine\u201d")
    assert "these quotes are curly" in page.text


@pytest.mark.parametrize("written", ["27 1/2", "27½", "27,5", "27.5"])
def test_half_a_stitch_is_written_as_people_write_it(
    filled: Page, press: Press, written: str
) -> None:
    """As the field's hint says."""
    page = press(filled, "draft", **{"swatch-double_crochet-stitches": written})
    assert "Drafted and proven" in page.text


def test_size_below_zero_is_told_as_such(filled: Page, press: Press) -> None:
    """Not as one without a unit: the page has given it one."""
    page = press(filled, "draft", **{"body-waist_girth": "-5"})
    assert page.error("body-waist_girth") == '"-5 cm" must be more than zero'


def test_fault_of_ours_is_one_sentence() -> None:
    """No traceback reaches the page."""
    answer = guard.our_fault(RequestFactory().get("/", headers={"host": "localhost"}))
    assert answer.status_code == 500
    assert "Something went wrong inside Frogless" in Page(answer).text
