// Rows for whole sections of a case: the counter, bottles' ages, the laboratory's rules, the marks.
#include "drafting_support.hpp"

#include "engine/drafting/draft.hpp"
#include "engine/drafting/entry.hpp"
#include "engine/drafting/list_text.hpp"
#include "engine/reception/judge.hpp"

#include <algorithm>
#include <fstream>

using namespace matula;
using namespace matula::test;
using drafting::Entry;
using drafting::Studio;

namespace {

/// Sections an author wrote in an order and a spacing of his own.
const std::string odd_sections = R"(
# what it is worth
[weights]
each_grade   =  30   # a grade is the point here
procedure = 10

[collection]   # the label is the trap
received = "08:10"
number = "SB 71 209"
request = [ "protein",   # asked
            "sugar" ]
kind = "midstream_male"
passed = "07:40"     # as written
container = "clean_cup"
label = "lid" # should stand on the cup

[marking]
loss = [ 0, 100,     # one off is little
         600, 1000, 1000, 1000 ] # three are all
pass_mark = 700

[laboratory_rules]
protein_per_g_dl =    0.0026 # an older float
one_division_per = "3 C"

[bench.bottle_age]
benedict = "400 d"   # nobody looked
)";

std::unique_ptr<Studio> odd_case(const fs::path& folder) {
  std::string text = text_of(scenarios / "first_case.toml");
  text.erase(text.find("[review]"));
  if (text.find("\"benedict\"") == std::string::npos) {
    FAIL("the case has no benedict out");
  }
  std::ofstream(folder / "odd.toml") << text << odd_sections;
  auto studio = studio_in(folder);
  REQUIRE(studio->begin_own(folder / "odd.toml").empty());
  INFO(joined(studio->form().problems));
  REQUIRE(studio->form().problems.empty());
  return studio;
}

/// The words a line of the text begins with, up to what stands there of it.
bool has(const Studio& studio, const std::string& words) {
  return studio.text().find(words) != std::string::npos;
}

std::string verdict_of(const Studio& studio) {
  return studio.form().answer ? studio.form().answer->verdict : "none";
}

scenario::Scenario read(const Studio& studio) {
  const auto made = scenario::parse(studio.text(), "made.toml", catalogue());
  if (!made) {
    FAIL(scenario::to_text(made.error()));
  }
  return *made;
}

} // namespace

TEST_CASE("every section has its rows, with the words and ranges the schema publishes") {
  Folder folder;
  const auto studio = odd_case(folder.path);
  CHECK(value_in(*studio, "weights.each_grade") == "30");
  CHECK(value_in(*studio, "marking.loss") == "0, 100, 600, 1000, 1000, 1000");
  CHECK(value_in(*studio, "collection.label") == "lid");
  CHECK(value_in(*studio, "bench.bottle_age.benedict") == "400 d");
  CHECK(value_in(*studio, "laboratory_rules.protein_per_g_dl") == "0.0026");
  const auto& form = studio->form();
  CHECK(drafting::find_row(form, "collection.label")->choices ==
        std::vector<std::string>{"container", "lid", "none"});
  CHECK(drafting::find_row(form, "collection.kind")->choices == reception::shipped_book()->keys("kind"));
  CHECK(drafting::find_row(form, "collection.kind")->about.find("midstream") == 0);
  CHECK(drafting::find_row(form, "collection.volume")->range == "0.5 to 150 mL");
  CHECK(drafting::find_row(form, "bench.bottle_age.benedict")->about.find("400 days") != std::string::npos);
  CHECK(drafting::find_row(form, "bench.bottle_age.water")->about.find("keeps for ever") == 0);
  CHECK(drafting::find_row(form, "weights.each_look")->value.empty());
  CHECK(drafting::find_row(form, "tolerances.temperature_full")->range == "0 to 10 C");
}

TEST_CASE("a row of any section changes its own value and no byte besides") {
  struct Typed {
    const char* path;
    const char* typed;
    const char* before; ///< As it stands in the text,
    const char* after;  ///< and what stands there then.
  };
  const std::vector<Typed> all{
      {"weights.each_grade", "25", "each_grade   =  30   # a", "each_grade   =  25   # a"},
      {"collection.label", "container", "label = \"lid\" # should", "label = \"container\" # should"},
      {"collection.passed", "07:50", "passed = \"07:40\"     # as", "passed = \"07:50\"     # as"},
      {"collection.kind", "random", "kind = \"midstream_male\"", "kind = \"random\""},
      {"marking.loss", "0, 150, 600, 900 1000, 1000",
       "loss = [ 0, 100,     # one off is little\n         600, 1000, 1000, 1000 ] # three",
       "loss = [ 0, 150,     # one off is little\n         600, 900, 1000, 1000 ] # three"},
      {"laboratory_rules.protein_per_g_dl", "0.003", "=    0.0026 # an older", "=    0.003 # an older"},
      {"bench.bottle_age.benedict", "30", "benedict = \"400 d\"   # no", "benedict = \"30 d\"   # no"},
      {"collection.request", "", "\"protein\",   # asked\n            \"sugar\" ]",
       "\"protein\",   # asked\n            \"sugar\", \"blood\" ]"}};
  for (const Typed& one : all) {
    Folder folder;
    const auto studio = odd_case(folder.path);
    std::string meant = studio->text();
    const auto at = meant.find(one.before);
    INFO(one.path);
    REQUIRE(at != std::string::npos);
    meant.replace(at, std::string(one.before).size(), one.after);
    const std::string was = studio->text();
    CHECK(
        (*one.typed == 0 ? studio->ask_at_counter("blood", true) : studio->set(one.path, one.typed)).empty());
    CHECK(studio->text() == meant);
    CHECK(studio->form().problems.empty());
    (void)studio->undo();
    CHECK(studio->text() == was);
  }
}

TEST_CASE("what may be left out is written where it belongs and goes again when it is emptied") {
  Folder folder;
  const auto studio = odd_case(folder.path);
  const std::string was = studio->text();
  for (const auto& [path, typed] :
       std::vector<std::pair<std::string, std::string>>{{"collection.storage", "room"},
                                                        {"collection.remark", "cannot be had again"},
                                                        {"collection.replaceable", "false"},
                                                        {"collection.volume", "40"},
                                                        {"weights.each_look", "4"},
                                                        {"marking.reader_spread", "0.3"},
                                                        {"laboratory_rules.glucose_per_g_dl", "0.003"},
                                                        {"bench.bottle_age.ssa_3", "90"}}) {
    INFO(path);
    CHECK(studio->set(path, typed).empty());
    CHECK(studio->form().problems.empty());
    CHECK(value_in(*studio, path).rfind(typed, 0) == 0);
    CHECK(studio->set(path, "").empty());
    CHECK(studio->text() == was);
  }
  // A section that is not there yet comes with its heading.
  CHECK(studio->set("tolerances.temperature_full", "2").empty());
  CHECK(has(*studio, "[tolerances]\ntemperature_full = \"2 C\""));
  CHECK(read(*studio).marking.temperature_full_c == Approx(2));
}

TEST_CASE("what reads badly in a section is said at its row, and the answer is then of the case before") {
  Folder folder;
  const auto studio = odd_case(folder.path);
  CHECK(studio->form().answer_fresh);
  const std::string verdict = verdict_of(*studio);
  for (const auto& [path, typed] :
       std::vector<std::pair<std::string, std::string>>{{"weights.each_grade", "300"},
                                                        {"marking.loss", "0, 100"},
                                                        {"marking.loss", "0, lots"},
                                                        {"collection.received", "ten past eight"},
                                                        {"collection.preservative", "thymol"},
                                                        {"bench.bottle_age.benedict", "9000 d"},
                                                        {"laboratory_rules.one_division_per", "30 C"}}) {
    INFO(path << " = " << typed);
    CHECK(studio->set(path, typed).empty());
    REQUIRE_FALSE(studio->form().problems.empty());
    CHECK_FALSE(drafting::find_row(studio->form(), path)->problem.empty());
    CHECK_FALSE(studio->form().answer_fresh);
    CHECK(verdict_of(*studio) == verdict);
    (void)studio->undo();
    CHECK(studio->form().problems.empty());
  }
}

TEST_CASE("a counter is made in the form, and its answer is the reception's own judgement") {
  Folder folder;
  auto studio = studio_in(folder.path);
  REQUIRE(studio->begin_plain().empty());
  const std::string without = studio->text();
  CHECK_FALSE(studio->form().counter);
  CHECK_FALSE(studio->form().answer);
  CHECK(studio->add_counter().empty());
  INFO(joined(studio->form().problems));
  REQUIRE(studio->form().problems.empty());
  CHECK(studio->form().counter);
  CHECK(verdict_of(*studio) == "accept");
  CHECK(studio->form().answer->because.empty());
  for (const auto& [path, typed] :
       std::vector<std::pair<std::string, std::string>>{{"collection.label", "lid"},
                                                        {"collection.replaceable", "false"},
                                                        {"collection.label", "none"},
                                                        {"collection.contamination", "faeces"},
                                                        {"collection.leaking", "true"},
                                                        {"collection.received", "13:40"}}) {
    CHECK(studio->set(path, typed).empty());
    const auto judgement = reception::judge(*read(*studio).collection, *reception::shipped_book());
    INFO(path << " = " << typed);
    CHECK(verdict_of(*studio) == reception::to_word(judgement.verdict));
    CHECK(studio->form().answer->because.size() + studio->form().answer->notes.size() ==
          judgement.broken.size());
  }
  CHECK(verdict_of(*studio) == "qualify"); // All that is wrong with it, and it cannot be had again.
  CHECK(studio->set("collection.replaceable", "").empty());
  CHECK(verdict_of(*studio) == "refuse");
  CHECK(studio->remove("collection").empty());
  CHECK_FALSE(studio->form().counter);
  CHECK(studio->text() == without);
}

TEST_CASE("a counter begun for a specimen with a way and a preservative is true of it") {
  Folder folder;
  auto studio = studio_in(folder.path);
  REQUIRE(studio->begin_plain().empty());
  CHECK(studio->add_leg().empty());
  CHECK(studio->set("specimen.leg[0].hours", "3 h").empty());
  CHECK(studio->add_preservative("boric_acid").empty());
  CHECK(studio->add_counter().empty());
  INFO(joined(studio->form().problems));
  CHECK(studio->form().problems.empty());
  CHECK(value_in(*studio, "collection.preservative") == "boric");
  CHECK(value_in(*studio, "collection.received") == "10:40");
}

TEST_CASE("the voids of a day are added and taken out, and the sums are said") {
  Folder folder;
  auto studio = studio_in(folder.path);
  REQUIRE(studio->begin_plain().empty());
  CHECK(studio->add_counter().empty());
  CHECK(studio->add_void().empty());
  CHECK(studio->add_void().empty());
  INFO(joined(studio->form().problems));
  INFO(studio->text());
  REQUIRE(studio->form().problems.empty());
  const auto day = read(*studio).collection->day;
  REQUIRE(day);
  CHECK(day->voids.size() == 3);
  CHECK_FALSE(day->voids.front().kept);
  CHECK(day->sex == "male");
  const auto& sums = studio->form().answer->day;
  CHECK(std::find(sums.begin(), sums.end(), "Volume in the bottle: 500 mL") != sums.end());
  CHECK(studio->set("collection.void[2].volume", "0.4 L").empty());
  CHECK(studio->form().answer->day[3] == "Volume in the bottle: 650 mL");
  CHECK(studio->remove("collection.void[1].at").empty());
  CHECK(value_in(*studio, "collection.void[1].volume") == "0.4 L");
  CHECK(value_in(*studio, "collection.void[2].at") == "(no row)");
  CHECK(studio->form().problems.empty());
}

TEST_CASE("weights that do not add up are said at once") {
  Folder folder;
  const auto studio = odd_case(folder.path);
  const auto before = studio->form().weights.size();
  CHECK(studio->set("weights.each_grade", "0").empty());
  REQUIRE(studio->form().weights.size() > before);
  CHECK(joined(studio->form().weights).find("each_grade is 0") != std::string::npos);
  CHECK(studio->set("weights.each_grade", "").empty());
  CHECK(studio->form().weights.size() == before);
}

TEST_CASE("a bottle that is put away takes its age with it") {
  Folder folder;
  auto studio = studio_in(folder.path);
  REQUIRE(studio->begin_plain().empty());
  CHECK(studio->put_out("ssa_3", true).empty());
  const std::string was = studio->text();
  CHECK(studio->set("bench.bottle_age.ssa_3", "120").empty());
  CHECK(read(*studio).bottle_age_days.at("ssa_3") == Approx(120));
  CHECK(studio->put_out("ssa_3", false).empty());
  CHECK(studio->form().problems.empty());
  CHECK(value_in(*studio, "bench.bottle_age.ssa_3") == "(no row)");
  (void)studio->undo();
  CHECK(value_in(*studio, "bench.bottle_age.ssa_3") == "120 d");
}

TEST_CASE("a list of numbers keeps its remarks, and a shorter one is written anew") {
  const std::string list = "[ 0, 1.5, # no 3 here\n -2e3 ]";
  CHECK(drafting::numbers_of_list(list) == std::vector<std::string>{"0", "1.5", "-2e3"});
  CHECK(drafting::with_numbers(list, {"7", "8", "9"}) == "[ 7, 8, # no 3 here\n 9 ]");
  CHECK(drafting::with_numbers(list, {"7", "8"}) == "[7, 8]");
  CHECK(drafting::numbers_of_list("[\"a\", 1]").empty());
  CHECK(drafting::numbers_of_list("[]").empty());
  CHECK(drafting::toml_of(Entry::Numbers, "1, 2;", "") == "\"1, 2;\"");
  CHECK(drafting::numbers_typed(" 1 2,3 ") == std::vector<std::string>{"1", "2", "3"});
}
