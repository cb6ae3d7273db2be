// Parallel forms: the same words, as hard for everybody, and a specimen of one's own.
#include "author_support.hpp"

#include "engine/author/forms.hpp"
#include "engine/author/sheet.hpp"
#include "engine/generator/generate.hpp"
#include "engine/scoring/moments.hpp"
#include "engine/sitting/setup.hpp"

#include <filesystem>
#include <fstream>
#include <set>

using namespace matula;

namespace {

const practice::Rules& rules() {
  static const auto read = practice::load_rules(assets::folder());
  REQUIRE(read);
  return *read;
}

const generator::People& people() {
  static const auto read = generator::read_people(generator::people_file(assets::folder()));
  REQUIRE(read);
  return *read;
}

author::Plan plan_of(const std::string& text) {
  const auto file = std::filesystem::temp_directory_path() / "matula_test_plan.toml";
  std::ofstream(file) << text;
  const auto plan = author::read_plan(file, test::shelf());
  std::filesystem::remove(file);
  if (!plan) {
    FAIL(scenario::to_text(plan.error()));
  }
  return *plan;
}

std::vector<author::Form> forms_of(const author::Plan& plan, const std::vector<std::string>& students,
                                   std::uint64_t seed) {
  const auto forms = author::make_forms({&test::shelf(), &rules(), &people()}, plan, students, seed);
  if (!forms) {
    FAIL(test::joined(forms.error()));
  }
  return *forms;
}

} // namespace

TEST_CASE("a plan multiplies out tests, grades and traps, and refuses what it does not know") {
  const auto plan =
      plan_of("title = \"P\"\n[[unknown]]\nheat = [\"trace\", \"2+\"]\nbenedict = \"negative\"\ntrap = "
              "[\"plain\", \"dark\"]\ncount = 2\n");
  CHECK(plan.rows.size() == 8);
  const auto file = std::filesystem::temp_directory_path() / "matula_test_bad_plan.toml";
  std::ofstream(file) << "title = \"P\"\n[[unknown]]\nheat = \"5+\"\ntrap = \"ghost\"\nhat = 1\n";
  const auto bad = author::read_plan(file, test::shelf());
  std::filesystem::remove(file);
  REQUIRE_FALSE(bad);
  CHECK(bad.error().size() == 3);
}

TEST_CASE("forms are as hard for everybody within the tolerance, and no specimen comes twice") {
  const auto plan =
      plan_of("title = \"P\"\ntolerance = 0.2\n[[unknown]]\nheat = \"2+\"\nbenedict = \"negative\"\ntrap = "
              "\"float\"\n[[unknown]]\nbenedict = \"1+\"\nrothera = \"1+\"\ntrap = \"dark\"\n");
  const std::vector<std::string> students{"ada", "bo", "cy"};
  const auto forms = forms_of(plan, students, 5);
  REQUIRE(forms.size() == students.size());
  std::set<std::string> specimens;
  std::set<std::string> patients;
  for (std::size_t row = 0; row < plan.rows.size(); ++row) {
    double least = 1e9;
    double most = -1e9;
    for (const auto& form : forms) {
      const auto& unknown = form.unknowns[row];
      least = std::min(least, unknown.difficulty);
      most = std::max(most, unknown.difficulty);
      specimens.insert(unknown.text.substr(unknown.text.find("[specimen]")));
      patients.insert(unknown.number + unknown.scenario.patient.name);
      // By the file, read and worked as any case is.
      const auto read = scenario::parse(unknown.text, "unknown.toml", test::shelf().world->catalogue);
      if (!read) {
        FAIL(scenario::to_text(read.error()));
      }
      for (const auto& [test, word] : plan.rows[row].words) {
        const auto& rule = *test::shelf().standards->rules.find_test(test);
        const auto setup = sitting::make_setup(*test::shelf().world, *read);
        const auto tube = scoring::do_by_the_book(setup, test::shelf().standards->recipes.at(test));
        REQUIRE(tube.stopped_because.empty());
        const auto grade =
            scoring::read_vessel(tube.state, setup, test::shelf().world->thresholds, rule.scale, tube.vessel);
        INFO(form.student << " " << test << " " << grade.intensity);
        CHECK(rule.word(grade.grade) == word);
      }
    }
    CHECK(most - least <= plan.tolerance);
  }
  CHECK(specimens.size() == students.size() * plan.rows.size());
  CHECK(patients.size() == students.size() * plan.rows.size());
  const auto html = author::printable_sheet(plan, forms, test::shelf());
  for (const auto& form : forms) {
    CHECK(html.find(">" + form.student + "<") != std::string::npos);
    CHECK(html.find(form.unknowns[0].number) != std::string::npos);
  }
  const auto key = author::printable_key(plan, forms);
  for (const auto& form : forms) {
    for (const auto& unknown : form.unknowns) {
      CHECK(key.find(unknown.number) != std::string::npos);
      for (const auto& shown : unknown.shown) {
        CHECK(key.find("<b>" + shown.word + "</b>") != std::string::npos);
      }
    }
  }
  CHECK(html.find("2+") == std::string::npos); // No result stands on it.
  CHECK(html.find("mg/dL") == std::string::npos);
}

TEST_CASE("the same seed gives the same forms, and a student more changes nobody else's first unknown") {
  const auto plan = plan_of("title = \"P\"\n[[unknown]]\nrothera = \"1+\"\n");
  const auto one = forms_of(plan, {"ada"}, 5);
  const auto two = forms_of(plan, {"ada", "bo"}, 5);
  CHECK(one[0].unknowns[0].text == two[0].unknowns[0].text);
  CHECK(two[0].unknowns[0].text != two[1].unknowns[0].text);
  CHECK(forms_of(plan, {"ada"}, 6)[0].unknowns[0].text != one[0].unknowns[0].text);
}

TEST_CASE("an unknown that cannot be had is said") {
  const auto plan =
      plan_of("title = \"P\"\n[[unknown]]\nbenedict = \"4+\"\nspecific_gravity_between = [1.003, 1.005]\n");
  const auto forms = author::make_forms({&test::shelf(), &rules(), &people()}, plan, {"1"}, 1);
  REQUIRE_FALSE(forms);
  CHECK_THAT(test::joined(forms.error()),
             Catch::Contains("Unknown 1 (benedict 4+, plain) for 1 cannot be had"));
}
