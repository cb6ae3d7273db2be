// What stands beside an author's form: every asked test by the book, one after another.
#include "author_support.hpp"

#include "engine/author/preview.hpp"
#include "engine/author/save.hpp"
#include "engine/scoring/moments.hpp"
#include "engine/sitting/setup.hpp"
#include "engine/strict/file.hpp"

using namespace matula;

namespace {

const std::string cases = MATULA_SOURCE_DIR "/scenarios/";

scenario::Scenario load(const std::string& key) {
  const auto read = scenario::load(cases + key + ".toml", test::shelf().world->catalogue);
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  return *read;
}

} // namespace

TEST_CASE("a preview reads as the same tests by the book do") {
  const auto& shelf = test::shelf();
  for (const char* key : {"frothy_ankles", "sweet_breath", "burning_cystitis", "cold_store"}) {
    const auto scenario = load(key);
    const auto all = author::preview(shelf, scenario);
    const auto setup = sitting::make_setup(*shelf.world, scenario);
    REQUIRE(all.shown().size() == scenario.asked.procedures.size());
    for (const auto& shown : all.shown()) {
      INFO(key << " " << shown.test << " took " << shown.took_ms << " ms");
      const auto& rule = *shelf.standards->rules.find_test(shown.test);
      CHECK(shown.stopped_because.empty());
      CHECK(!shown.word.empty());
      CHECK(shown.state != nullptr);
      if (rule.result == procedure::Result::Number || shown.other_bottle) {
        continue;
      }
      const auto tube = scoring::do_by_the_book(setup, shelf.standards->recipes.at(shown.test));
      const auto grade =
          scoring::read_vessel(tube.state, setup, shelf.world->thresholds, rule.scale, tube.vessel);
      CHECK(shown.word == rule.word(grade.grade));
      CHECK(shown.intensity == Approx(grade.intensity).margin(1e-9));
    }
  }
}

TEST_CASE("a preview shows the float, the figures of instruments and a curve of standards") {
  const auto& shelf = test::shelf();
  const auto scenario = load("day_protein");
  const auto all = author::preview(shelf, scenario, {"turbidity", "refractometer"});
  REQUIRE(all.shown()[0].figure);
  double protein = 0;
  for (const auto& [key, mg_per_dl] : scenario.specimen.mg_per_dl) {
    protein += key == "albumin" || key == "globulin" ? mg_per_dl : 0;
  }
  // Read off a curve drawn from point to point: within a tenth.
  CHECK(*all.shown()[0].figure == Approx(protein).epsilon(0.1));
  REQUIRE(all.shown()[1].figure);
  CHECK(*all.shown()[1].figure == Approx(all.liquid().density_20).margin(0.002));
  REQUIRE(all.liquid().float_reads);
  CHECK(*all.liquid().float_reads - scenario.urinometer_zero_error ==
        Approx(all.liquid().gravity).margin(0.002));
}

TEST_CASE("a preview goes test by test and can be given up between") {
  author::Preview preview(test::shelf(), load("frothy_ankles"));
  CHECK(preview.shown().empty());
  CHECK(preview.next());
  CHECK(preview.shown().size() == 1);
  CHECK_FALSE(preview.next([] { return true; }));
  CHECK(preview.shown().size() == 1);
  CHECK(preview.next());
  CHECK(preview.shown().size() == 2);
}

TEST_CASE("a case's specimen is changed in its text, in its author's units, and nothing else is") {
  const auto& shelf = test::shelf();
  std::string text;
  REQUIRE(strict::read_text(cases + "sweet_breath.toml", text));
  const auto now = load("sweet_breath");
  CHECK(author::changes_for(text, now.specimen, now.specimen, shelf).empty());
  auto wanted = now.specimen;
  author::set_amount(wanted, {"dissolved", "glucose"}, 111.0, *shelf.limits, shelf.world->catalogue);
  const auto edited = author::save(text, author::changes_for(text, now.specimen, wanted, shelf)).value();
  CHECK(edited.find("glucose = \"2 g/dL\"") != std::string::npos);
  CHECK(edited.size() < text.size() + 3);
  const auto read = scenario::parse(edited, "edited.toml", shelf.world->catalogue);
  REQUIRE(read);
  CHECK(author::amount_of(read->specimen, {"dissolved", "glucose"}, *shelf.limits, shelf.world->catalogue) ==
        Approx(111).epsilon(0.001));
  author::set_amount(wanted, {"dissolved", "acetoacetate"}, 0, *shelf.limits, shelf.world->catalogue);
  const auto without = author::save(text, author::changes_for(text, now.specimen, wanted, shelf)).value();
  CHECK(without.find("\nacetoacetate") == std::string::npos);
}

TEST_CASE("every shipped case is what a patient can pass") {
  const auto& shelf = test::shelf();
  for (const auto& entry : std::filesystem::directory_iterator(cases)) {
    if (entry.path().extension() == ".toml") {
      const auto read = load(entry.path().stem().string());
      INFO(entry.path());
      CHECK(test::joined(author::implausible(read.specimen, shelf.physiology, *shelf.limits,
                                             shelf.world->catalogue)) == "");
    }
  }
}
