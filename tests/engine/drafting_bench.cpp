// The bench beside the authoring form: tubes that follow the newest specimen, and specimens made to look as
// wished.
#include "drafting_support.hpp"

#include "engine/drafting/draft.hpp"
#include "engine/drafting/showing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <thread>

using namespace matula;
using namespace matula::test;
using drafting::Draft;
using drafting::Studio;

namespace {

void settle(Studio& studio) {
  while (studio.working()) {
    std::this_thread::sleep_for(std::chrono::milliseconds(5));
  }
  (void)studio.poll();
}

const drafting::SeenTest& seen_of(const Studio& studio, const std::string& test) {
  for (const auto& one : studio.seen().tests) {
    if (one.test == test) {
      return one;
    }
  }
  FAIL("no test " << test);
  return studio.seen().tests.front();
}

} // namespace

TEST_CASE("the bench gives up what is no longer wanted, and ends with the newest specimen") {
  const auto& shelf = test::shelf();
  drafting::Showing showing(shelf);
  std::string text = text_of(scenarios / "first_case.toml");
  auto asked = strict::set_value(text, strict::path_from("asked.tests"), "[\"heat\", \"ssa\", \"benedict\"]");
  REQUIRE(asked);
  Draft draft(*asked, "case.toml", catalogue());
  constexpr int changes = 12;
  for (int i = 1; i <= changes; ++i) {
    const std::string albumin = "\"" + std::to_string(20 * i) + " mg/dL\"";
    REQUIRE(draft.change({{"specimen.dissolved.albumin", albumin}}, "").empty());
    showing.want(draft.version(), draft.case_as_read(), std::nullopt);
    std::this_thread::sleep_for(std::chrono::milliseconds(10));
  }
  showing.wait();
  const auto made = showing.latest();
  REQUIRE(made != nullptr);
  CHECK(made->done);
  CHECK(made->version == draft.version());
  CHECK(made->shown.size() == 3);
  CHECK(showing.tests_done() < 3 * changes);
  // It is what the preview gives on its own.
  const auto alone = author::preview(shelf, *draft.case_as_read());
  for (std::size_t i = 0; i < alone.shown().size(); ++i) {
    CHECK(made->shown[i].word == alone.shown()[i].word);
    CHECK(made->shown[i].intensity == alone.shown()[i].intensity);
  }
  CHECK(made->liquid.gravity == alone.liquid().gravity);

  // Given up with nothing to follow: it comes to rest, and the newest version has not been finished.
  REQUIRE(draft.change({{"specimen.dissolved.albumin", "\"500 mg/dL\""}}, "").empty());
  showing.want(draft.version(), draft.case_as_read(), std::nullopt);
  showing.drop();
  showing.wait();
  CHECK_FALSE((showing.latest()->version == draft.version() && showing.latest()->done));
}

TEST_CASE("the tubes follow the form, and a specimen that cannot be read leaves the old ones standing") {
  Folder folder;
  auto studio = studio_in(folder.path);
  REQUIRE(studio->begin_copy(scenarios / "first_case.toml").empty());
  settle(*studio);
  CHECK(studio->seen().done);
  CHECK(seen_of(*studio, "heat").word == "2+");
  CHECK(seen_of(*studio, "heat").fresh);
  CHECK(studio->looks("heat", {}).vessel);
  CHECK(studio->specimen({}));
  CHECK(studio->set("specimen.dissolved.albumin", "40").empty());
  CHECK_FALSE(seen_of(*studio, "heat").fresh);
  CHECK(seen_of(*studio, "heat").word == "2+"); // Until the new one is done.
  settle(*studio);
  CHECK(seen_of(*studio, "heat").word == "1+");
  CHECK(seen_of(*studio, "heat").fresh);
  CHECK(studio->set("specimen.ph", "sour").empty());
  settle(*studio);
  CHECK(seen_of(*studio, "heat").word == "1+");
  CHECK_FALSE(studio->seen().done);
  CHECK(studio->undo() == "pH: 6.0 → sour");
  settle(*studio);
  CHECK(studio->seen().done);
  // Urea of a desert: the author is told.
  CHECK(studio->set("specimen.dissolved.urea", "2").empty());
  settle(*studio);
  CHECK_FALSE(studio->seen().warnings.empty());
  // A paper has a pad and its card instead of a tube.
  CHECK(studio->ask_for("strip_protein", true).empty());
  settle(*studio);
  CHECK(studio->looks("strip_protein", {}).pad);
}

TEST_CASE(
    "what is proposed changes nothing until it is taken, is undone in one step, and shows what was wished") {
  Folder folder;
  auto studio = studio_in(folder.path);
  REQUIRE(studio->begin_copy(scenarios / "first_case.toml").empty());
  const std::string before = studio->text();
  CHECK_FALSE(studio->make_it_look({}).empty());
  CHECK_FALSE(studio->make_it_look({"heat=7+"}).empty());
  CHECK(studio->make_it_look({"heat=2+", "benedict=3+", "sg=1.018"}).empty());
  CHECK(studio->making());
  settle(*studio);
  REQUIRE(studio->proposal());
  CHECK(studio->text() == before);
  const auto lines = studio->proposal()->lines; // The proposal goes when it is taken.
  const auto glucose =
      std::find_if(lines.begin(), lines.end(), [](const auto& line) { return line.label == "glucose"; });
  REQUIRE(glucose != lines.end());
  CHECK(glucose->from.empty());
  CHECK(studio->take().empty());
  settle(*studio);
  CHECK(value_in(*studio, "specimen.dissolved.glucose") == glucose->to);
  CHECK(seen_of(*studio, "heat").word == "2+");
  CHECK(seen_of(*studio, "benedict").word == "3+");
  CHECK(studio->text().find("# absorbance a cm at 420 nm") != std::string::npos);
  CHECK_FALSE(studio->proposal());
  CHECK(studio->undo() == "made to look as wished");
  CHECK(studio->text() == before);

  // Left alone, stopped, or overtaken by a change: nothing of it comes.
  CHECK(studio->make_it_look({"heat=1+"}).empty());
  studio->stop_making();
  settle(*studio);
  CHECK_FALSE(studio->proposal());
  CHECK(studio->make_it_look({"heat=1+"}).empty());
  CHECK(studio->step("specimen.ph", true).empty());
  settle(*studio);
  CHECK_FALSE(studio->proposal());
  CHECK_FALSE(studio->take().empty());

  // What cannot be had is said.
  CHECK(studio->make_it_look({"benedict=4+", "sg=1.002"}).empty());
  settle(*studio);
  CHECK_FALSE(studio->proposal());
  CHECK_FALSE(studio->refusal().empty());
}

TEST_CASE(
    "a word made by another substance and an amount are wished for in the form as on the command line") {
  Folder folder;
  auto studio = studio_in(folder.path);
  REQUIRE(studio->begin_copy(scenarios / "first_case.toml").empty());
  const auto substances = studio->substances();
  CHECK(std::any_of(substances.begin(), substances.end(),
                    [](const auto& one) { return one.path == "dissolved.lactose"; }));
  CHECK(studio->amount_to_wish("dissolved.albumin") == "130 mg/dL");
  CHECK(studio->amount_to_wish("dissolved.lactose") == "7.5 mmol/L");
  CHECK(studio->make_it_look({"benedict=2+ by lactose", "dissolved.albumin=40 mg/dL"}).empty());
  settle(*studio);
  INFO(joined(studio->refusal()));
  REQUIRE(studio->proposal());
  CHECK(studio->take().empty());
  settle(*studio);
  CHECK(value_in(*studio, "specimen.dissolved.albumin") == "40 mg/dL");
  CHECK(value_in(*studio, "specimen.dissolved.glucose") == "(no row)");
  CHECK(value_in(*studio, "specimen.dissolved.lactose") != "(no row)");
  CHECK(seen_of(*studio, "benedict").word == "2+");
}

TEST_CASE("the case's float swims in its jar beside the form, and what there is to earn is counted") {
  Folder folder;
  auto studio = studio_in(folder.path);
  REQUIRE(studio->begin_copy(scenarios / "first_case.toml").empty());
  settle(*studio);
  REQUIRE(studio->seen().floating);
  const auto looks = studio->looks("specific_gravity", {});
  REQUIRE(looks.floating);
  REQUIRE(looks.vessel);
  CHECK(studio->seen().floating->word == fmt::format("{:.4f}", looks.floating->scale.reading_at_surface));
  CHECK(studio->seen().floating->fresh);
  CHECK(looks.vessel->level_mm > 0);
  CHECK(looks.floating->urinometer_without_zero_error.zero_error == 0);

  int all = 0;
  for (const auto& ledger : studio->seen().worth) {
    all += ledger.marks;
  }
  CHECK(studio->set("weights.procedure", "33").empty());
  settle(*studio);
  int then = 0;
  for (const auto& ledger : studio->seen().worth) {
    then += ledger.marks;
  }
  CHECK(then == all + 13); // It was 20.

  // Too little urine: it is said, and nothing is drawn. Not asked for: it is not there.
  CHECK(studio->set("specimen.volume", "10").empty());
  settle(*studio);
  CHECK_FALSE(studio->looks("specific_gravity", {}).floating);
  CHECK(studio->seen().floating->word == "cannot be done");
  CHECK(studio->ask_for("specific_gravity", false).empty());
  settle(*studio);
  CHECK_FALSE(studio->seen().floating);
}
