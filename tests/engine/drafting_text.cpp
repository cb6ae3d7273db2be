// The authoring form without its window: the text of a case, its rows, the way back, the file.
#include "drafting_support.hpp"

#include "engine/drafting/draft.hpp"
#include "engine/drafting/entry.hpp"
#include "engine/drafting/list_text.hpp"

#include <fstream>
#include <sstream>

using namespace matula;
using namespace matula::test;
using drafting::Draft;
using drafting::Entry;
using drafting::Saved;

namespace {

int lines_that_differ(const std::string& one, const std::string& other) {
  std::istringstream a(one);
  std::istringstream b(other);
  std::string x;
  std::string y;
  int differ = 0;
  while (true) {
    const bool more_a = static_cast<bool>(std::getline(a, x));
    const bool more_b = static_cast<bool>(std::getline(b, y));
    if (!more_a && !more_b) {
      return differ;
    }
    differ += more_a != more_b || x != y ? 1 : 0;
  }
}

} // namespace

TEST_CASE("what is typed into any row of any shipped case comes back from it, and nothing else moves") {
  int rows = 0;
  for (const auto& entry : fs::directory_iterator(scenarios)) {
    if (entry.path().extension() != ".toml") {
      continue;
    }
    const std::string text = text_of(entry.path());
    const auto form = drafting::form_of(text, {}, test::shelf());
    REQUIRE(form.groups.size() == 14);
    for (const auto& group : form.groups) {
      for (const auto& row : group.rows) {
        INFO(entry.path() << " " << row.path << " = " << row.value);
        if (row.value.empty() || row.entry == Entry::Paragraph) {
          continue;
        }
        Draft draft(text, "case.toml", catalogue());
        // As it stands: nothing changes, not even the version.
        const auto same = drafting::toml_of(row.entry, row.value, row.unit);
        CHECK(draft.change({{row.path, same}}, "").empty());
        CHECK(draft.text() == text);
        // Otherwise: one line, and back to the byte.
        const auto other = drafting::toml_of(row.entry, "quite \"another\" \\ thing", row.unit);
        CHECK(draft.change({{row.path, other}}, "x").empty());
        CHECK(lines_that_differ(draft.text(), text) == 1);
        CHECK(drafting::typed_at(draft.text(), row.path) == "quite \"another\" \\ thing");
        CHECK(draft.undo() == "x");
        CHECK(draft.text() == text);
        ++rows;
      }
    }
  }
  CHECK(rows > 1500);
}

TEST_CASE("a number alone takes the unit its author wrote, and words are taken as they are") {
  CHECK(drafting::toml_of(Entry::Quantity, " 300 ", "mg/dL") == "\"300 mg/dL\"");
  CHECK(drafting::toml_of(Entry::Quantity, "0.3 g/dL", "mg/dL") == "\"0.3 g/dL\"");
  CHECK(drafting::toml_of(Entry::Number, "6.5", "") == "6.5");
  CHECK(drafting::toml_of(Entry::Number, "-0.002", "") == "-0.002");
  for (const char* odd : {"6,5", "06", ".5", "5.", "-", "nan", "inf", "0x10", "1 2", "+3"}) {
    INFO(odd);
    CHECK(drafting::toml_of(Entry::Number, odd, "") == "\"" + std::string(odd) + "\"");
  }
  CHECK(drafting::stepped("100 mg/dL", true, 0) == "125 mg/dL");
  CHECK(drafting::stepped("125 mg/dL", false, 0) == "100 mg/dL");
  CHECK(drafting::stepped("6.0", true, 0.1) == "6.1");
  CHECK(drafting::stepped("0.001", false, 0.001) == "0");
  CHECK(drafting::stepped("0", false, 0.001) == "-0.001");
  CHECK(drafting::stepped("22 C", true, 1) == "23 C");
  CHECK(drafting::stepped("no number", true, 1) == "no number");
}

TEST_CASE("paragraphs and odd letters come back as they were typed") {
  const std::string text = text_of(scenarios / "first_case.toml");
  for (const std::string words : {"One line.", "Two\nlines.", "A \\ and \"\"\" in it", "Tab\there",
                                  "Größe µ → ∞", "", "# no remark", "ends with a quote\""}) {
    INFO(words);
    Draft draft(text, "case.toml", catalogue());
    CHECK(draft.change({{"story", drafting::toml_of(Entry::Paragraph, words, "")}}, "x").empty());
    CHECK(drafting::typed_at(draft.text(), "story") == words);
    CHECK(draft.text().find("# The worked example") == 0);
  }
}

TEST_CASE("a list keeps its remarks and its lines when a word comes or goes") {
  const std::string list = "[\n  \"water\", # always, [\"so\"]\n  'benedict' # copper\n]";
  using drafting::with_word;
  using drafting::without_word;
  CHECK(drafting::words_of_list(list) == std::vector<std::string>{"water", "benedict"});
  CHECK(with_word(list, "ssa_3") ==
        "[\n  \"water\", # always, [\"so\"]\n  'benedict', \"ssa_3\" # copper\n]");
  CHECK(without_word(list, "benedict") == "[\n  \"water\"# always, [\"so\"]\n   # copper\n]");
  CHECK(without_word("[\"a\", \"b\", \"c\"]", "b") == "[\"a\", \"c\"]");
  CHECK(without_word("[\"a\", \"b\"]", "a") == "[\"b\"]");
  CHECK(without_word("[\"a\", \"b\"]", "b") == "[\"a\"]");
  CHECK(without_word("[\"a\"]", "a") == "[]");
  CHECK(with_word("[]", "a") == "[\"a\"]");
  CHECK(with_word("[\"a\",]", "b") == "[\"a\", \"b\",]");
  CHECK(with_word("[\"a\"]", "a") == "[\"a\"]");
}

TEST_CASE("what reads badly is kept as it was typed, said at its row, and loses no earlier work") {
  Folder folder;
  auto studio = studio_in(folder.path);
  REQUIRE(studio->begin_copy(scenarios / "first_case.toml").empty());
  CHECK(studio->form().problems.empty());
  CHECK(studio->set("specimen.dissolved.albumin", "300").empty());
  CHECK(value_in(*studio, "specimen.dissolved.albumin") == "300 mg/dL");
  CHECK(studio->set("specimen.ph", "6,5").empty());
  CHECK(value_in(*studio, "specimen.ph") == "6,5");
  REQUIRE(studio->form().problems.size() == 1);
  const auto* row = drafting::find_row(studio->form(), "specimen.ph");
  CHECK(row->problem.find("from 4.5 to 9.5") != std::string::npos);
  CHECK(studio->set("specimen.dissolved.albumin", "9000").empty());
  CHECK(studio->form().problems.size() == 2);
  CHECK(drafting::find_row(studio->form(), "specimen.dissolved.albumin")->problem.find("2000") !=
        std::string::npos);
  const auto refused = studio->save("broken", false);
  CHECK(refused.outcome == Saved::Outcome::Refused);
  CHECK_FALSE(fs::exists(folder.path / "broken.toml"));
  CHECK(studio->undo() == "albumin: 300 mg/dL → 9000 mg/dL");
  CHECK(studio->undo() == "pH: 6.0 → 6,5");
  CHECK(studio->form().problems.empty());
  CHECK(studio->redo() == "pH: 6.0 → 6,5");
  CHECK(value_in(*studio, "specimen.ph") == "6,5");
  CHECK(studio->undo() == "pH: 6.0 → 6,5");
  CHECK(studio->undo() == "albumin: 130 mg/dL → 300 mg/dL");
  CHECK(studio->undo().empty());
  // The text need not even be TOML: it is kept, there is no form, and the way back is there.
  const std::string good = studio->text();
  studio->set_text("title = \"open\n[[");
  CHECK(studio->text() == "title = \"open\n[[");
  CHECK(studio->form().groups.empty());
  CHECK_FALSE(studio->form().problems.empty());
  CHECK(studio->undo() == "the file itself");
  CHECK(studio->text() == good);
}

TEST_CASE(
    "a case is made in the form from nothing but ticks and rows, and the file is one an author would write") {
  Folder folder;
  auto studio = studio_in(folder.path);
  REQUIRE(studio->begin_plain().empty());
  CHECK(studio->ask_for("ehrlich", true).empty());
  CHECK(studio->ask_for("heat", false).empty());
  CHECK(studio->add("specimen.dissolved.urobilinogen").empty());
  CHECK(value_in(*studio, "specimen.dissolved.urobilinogen") == "1.5 mg/dL");
  CHECK(studio->add("specimen.cells.erythrocytes").empty());
  CHECK(studio->add_leg().empty());
  CHECK(studio->add_leg().empty());
  CHECK(studio->set("specimen.leg[1].hours", "3").empty());
  CHECK(value_in(*studio, "specimen.leg[1].hours") == "3 h");
  CHECK(studio->set("specimen.leg[0].open", "true").empty());
  CHECK(studio->add_preservative("thymol").empty());
  CHECK(studio->add_question().empty());
  CHECK(studio->add_question().empty());
  CHECK(studio->set("decision[1].options.second", "Bile pigment is there").empty());
  CHECK(studio->add_option("decision[1].right").empty());
  CHECK(studio->add_option("decision[1].right").empty());
  CHECK(studio->set("decision[1].options.third", "Neither").empty());
  CHECK(studio->set("decision[1].right", "third").empty());
  INFO(studio->text());
  for (const auto& problem : studio->form().problems) {
    UNSCOPED_INFO(problem);
  }
  CHECK(studio->form().problems.empty());
  CHECK(studio->remove("specimen.leg[0].hours").empty());
  CHECK(value_in(*studio, "specimen.leg[0].hours") == "3 h");
  CHECK(studio->remove("specimen.dissolved.urobilinogen").empty());
  CHECK(value_in(*studio, "specimen.dissolved.urobilinogen") == "(no row)");
  CHECK(studio->remove("decision[0].prompt").empty());
  CHECK(studio->form().problems.empty());
  const auto read = scenario::parse(studio->text(), "made.toml", catalogue());
  REQUIRE(read);
  CHECK(read->specimen.life.size() == 1);
  CHECK(read->specimen.life.front().hours == Approx(3));
  REQUIRE(read->decisions.size() == 1);
  CHECK(read->decisions.front().options.size() == 4);
  CHECK(read->decisions.front().right == "third");
  CHECK(read->asked.procedures == std::vector<std::string>{"benedict", "ehrlich"});
  CHECK(studio->text().find("# Begun from a plain urine.") == 0);
}

TEST_CASE("an option is added to a question whose options stand under a heading of their own") {
  Folder folder;
  auto studio = studio_in(folder.path);
  REQUIRE(studio->begin_plain().empty());
  studio->set_text(studio->text() +
                   "\n[[decision]]\nkey = \"meaning\"\nprompt = \"What?\"\nright = \"one\"\nwhy = \"So.\"\n"
                   "[decision.options]\none = \"One\" # mine\nfirst = \"Two\"\n");
  REQUIRE(studio->form().problems.empty());
  CHECK(studio->add_option("decision[0].right").empty());
  CHECK(studio->form().problems.empty());
  CHECK(value_in(*studio, "decision[0].options.second") == "Another thing");
  CHECK(studio->text().find("one = \"One\" # mine") != std::string::npos);
}

TEST_CASE("every pattern begins a case that reads well, another patient for every seed") {
  Folder folder;
  auto studio = studio_in(folder.path);
  CHECK(studio->patterns().size() >= 30);
  std::string first;
  for (const auto& pattern : studio->patterns()) {
    INFO(pattern.key);
    CHECK(studio->begin_pattern(pattern.key, 3).empty());
    CHECK(studio->form().problems.empty());
    first = studio->text();
    CHECK(studio->begin_pattern(pattern.key, 4).empty());
    CHECK(studio->text() != first);
    studio->close();
  }
}

TEST_CASE("a case is saved whole under its own name and never over another's") {
  Folder folder;
  auto studio = studio_in(folder.path);
  REQUIRE(studio->begin_copy(scenarios / "first_case.toml").empty());
  const std::string copied = studio->text();
  CHECK(copied.find("[review") == std::string::npos); // Nobody has looked at the copy.
  CHECK(copied.find("# The worked example") == 0);
  CHECK(studio->unsaved());
  CHECK(studio->save("No Such Name", false).outcome == Saved::Outcome::Refused);
  CHECK(studio->save("../out", false).outcome == Saved::Outcome::Refused);
  CHECK(studio->save("first_case", false).outcome == Saved::Outcome::Refused); // It is shipped.
  CHECK(studio->save("mine", false).outcome == Saved::Outcome::Written);
  CHECK_FALSE(studio->unsaved());
  const fs::path mine = folder.path / "mine.toml";
  CHECK(text_of(mine) == studio->text());
  CHECK(studio->step("specimen.ph", true).empty());
  CHECK(studio->unsaved());
  CHECK(studio->save("mine", false).outcome == Saved::Outcome::Written);
  CHECK(lines_that_differ(text_of(mine), copied) == 1);

  // Somebody else writes into it.
  std::ofstream(mine) << "# theirs\n";
  CHECK(studio->step("specimen.ph", true).empty());
  CHECK(studio->save("mine", false).outcome == Saved::Outcome::Asks);
  CHECK(text_of(mine) == "# theirs\n");
  CHECK(studio->save("mine", true).outcome == Saved::Outcome::Written);
  CHECK(text_of(mine) == studio->text());

  // Another draft, the same name.
  auto other = studio_in(folder.path);
  REQUIRE(other->begin_plain().empty());
  CHECK(other->save("mine", false).outcome == Saved::Outcome::Asks);
  CHECK(text_of(mine) == studio->text());
  REQUIRE(other->begin_own(mine).empty());
  CHECK_FALSE(other->unsaved());
  CHECK(other->text() == studio->text());

  // A folder that cannot be written to: said, and nothing lost.
  auto nowhere = studio_in("/proc/no-such-folder");
  REQUIRE(nowhere->begin_plain().empty());
  const auto refused = nowhere->save("mine", false);
  CHECK(refused.outcome == Saved::Outcome::Refused);
  CHECK(refused.words.find("cannot be written") != std::string::npos);
  CHECK(nowhere->unsaved());
}
