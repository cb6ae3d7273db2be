// Work with test papers: every slip costs marks of the procedure and says what it was; a sitting by the book
// loses nothing.
#include "played_support.hpp"

#include "engine/sitting/steps.hpp"

#include <algorithm>

using namespace matula;
using scoring::Ledger;
using test::standards;

namespace {

/// A jaundiced specimen at which only `tests` are asked, with all marks that procedure can give.
scenario::Scenario asked(const std::vector<std::string>& tests, double temperature_c = 22) {
  scenario::Scenario made = test::load_case("rising_hepatitis");
  made.asked = {};
  made.asked.procedures = tests;
  made.decisions.clear();
  made.marking.process_weight = 100;
  made.specimen.temperature_c = temperature_c;
  made.specimen.stood_hours = 0;
  made.specimen.life.clear();
  made.reagents_out = {"barium_chloride_10", "fouchet", "acetic_acid_10"};
  return made;
}

scoring::Report played(const scenario::Scenario& scenario, const std::string& steps) {
  const std::string gloved = "{\"do\":\"protect\",\"gloves\":true,\"goggles\":true}\n" + steps;
  const auto log = sitting::parse_steps(gloved, "steps");
  if (!log) {
    FAIL(scenario::to_text(log.error()));
  }
  return scoring::score(test::world(), standards(), scenario, *log);
}

/// The mark lost under this rule; null when nothing was.
const scoring::Mark* slip(const scoring::Report& report, const std::string& rule) {
  const auto found = std::find_if(report.marks.begin(), report.marks.end(),
                                  [&](const auto& mark) { return mark.item == "process." + rule; });
  return found == report.marks.end() || found->reason.empty() ? nullptr : &*found;
}

/// Of a report in which one slip was planted: it is named, in these words, and costs what its rank says; no
/// other is found.
void check_slip(const scoring::Report& report, const std::string& rule, const std::string& words, int cost) {
  INFO(rule);
  const auto* mark = slip(report, rule);
  REQUIRE(mark != nullptr);
  INFO(mark->reason);
  CHECK(mark->reason.find(words) != std::string::npos);
  CHECK(report.possible(Ledger::Process) - report.earned(Ledger::Process) == cost);
}

const std::string mix = R"({"do":"mix","vessel":"specimen","manner":"swirl","seconds":10})"
                        "\n";
const std::string dip = R"({"do":"dip","paper":"strip","vessel":"specimen","seconds":1})"
                        "\n";
const std::string blot = R"({"do":"blot","paper":"strip-1"})"
                         "\n";

std::string wait(double seconds) {
  return "{\"wait\":" + std::to_string(seconds) + "}\n";
}
std::string write(const std::string& test, const std::string& word) {
  return R"({"do":"record","item":")" + test + R"(.grade","value":")" + word + "\"}\n";
}

const std::string tube = R"({"do":"pour","from":"specimen","to":"tube-1","volume_ml":5})"
                         "\n";
const std::string turn = R"({"do":"mix","vessel":"tube-1","manner":"invert","seconds":10})"
                         "\n";
const std::string lay = R"({"do":"filter","from":"tube-1","to":"tube-2","volume_ml":5})"
                        "\n"
                        R"({"do":"lay_paper"})"
                        "\n";

std::string barium(double ml) {
  return R"({"do":"dispense","reagent":"barium_chloride_10","to":"tube-1","volume_ml":)" +
         std::to_string(ml) + "}\n";
}
std::string drops(int count) {
  return R"({"do":"drop_on","paper":"filter-1","reagent":"fouchet","drops":)" + std::to_string(count) + "}\n";
}

} // namespace

TEST_CASE("A strip done by the book loses nothing of the procedure") {
  const std::vector<std::string> pads{
      "strip_bilirubin", "strip_blood",   "strip_glucose",          "strip_ketones",     "strip_nitrite",
      "strip_ph",        "strip_protein", "strip_specific_gravity", "strip_urobilinogen"};
  std::string steps = mix + dip + blot + wait(60);
  for (const auto& pad : pads) {
    steps += write(pad, "negative");
  }
  auto all = pads;
  all.insert(all.begin() + 4, "strip_leucocytes");
  const auto report = played(asked(all), steps + wait(60) + write("strip_leucocytes", "negative"));
  CHECK(report.earned(Ledger::Process) == report.possible(Ledger::Process));
  CHECK(report.possible(Ledger::Process) == 100);
}

TEST_CASE("Each slip at a strip costs its part and names itself") {
  const auto one = asked({"strip_glucose"});
  const std::string read = write("strip_glucose", "negative");
  const std::string long_dip = R"({"do":"dip","paper":"strip","vessel":"specimen","seconds":10})"
                               "\n";
  check_slip(played(one, mix + long_dip + blot + wait(60) + read), "strip_glucose.dip", "for 10 s", 20);
  check_slip(played(one, mix + dip + wait(60) + read), "strip_glucose.blotted", "not blotted", 20);
  check_slip(played(one, mix + dip + blot + wait(30) + read), "strip_glucose.time", "too early", 50);
  check_slip(played(one, mix + dip + blot + wait(100) + read), "strip_glucose.time", "1 min 40 s", 50);
  check_slip(played(one, mix + dip + blot + wait(300) + read), "strip_glucose.void", "void", 100);
  check_slip(played(asked({"strip_glucose"}, 5), mix + dip + blot + wait(60) + read), "strip_glucose.cold",
             "slow in the cold", 50);
  const std::string blood = write("strip_blood", "negative");
  check_slip(played(asked({"strip_blood"}), dip + blot + wait(60) + blood), "strip_blood.mixed",
             "red cells sink", 50);
}

TEST_CASE("Leucocytes are read at two minutes, indicator paper at twenty seconds") {
  const std::string leucocytes = write("strip_leucocytes", "negative");
  check_slip(played(asked({"strip_leucocytes"}), mix + dip + blot + wait(60) + leucocytes),
             "strip_leucocytes.time", "too early", 50);
  const std::string slip_of_paper = R"({"do":"dip","paper":"ph","vessel":"specimen","seconds":1})"
                                    "\n";
  const auto ph = asked({"ph_paper"});
  const std::string six = write("ph_paper", "6");
  const auto well = played(ph, slip_of_paper + wait(20) + six);
  CHECK(well.earned(Ledger::Process) == 100);
  check_slip(played(ph, slip_of_paper + wait(60) + six), "ph_paper.time", "too late", 50);
}

TEST_CASE("Who wrote nothing has not read too late") {
  const auto report = played(asked({"strip_glucose"}), mix + dip + blot + wait(600));
  CHECK(slip(report, "strip_glucose.time") == nullptr);
  CHECK(slip(report, "strip_glucose.void") == nullptr);
}

TEST_CASE("Fouchet's test by the book loses nothing, is found by its paper and reads green") {
  const auto report =
      played(asked({"fouchet"}), mix + tube + barium(2.5) + turn + wait(300) +
                                     R"({"do":"mix","vessel":"tube-1","manner":"swirl","seconds":3})"
                                     "\n" +
                                     lay + drops(2) + wait(30) + write("fouchet", "2+"));
  CHECK(report.earned(Ledger::Process) == 100);
  CHECK(report.earned(Ledger::Reading) == report.possible(Ledger::Reading)); // 3 mg/dL of bilirubin.
  REQUIRE(report.tubes.size() == 1);
  CHECK(report.tubes.front().learner_vessel == "filter-1");
  CHECK(report.tubes.front().reference_word == report.tubes.front().learner_tube_word);
}

TEST_CASE("Each slip at Fouchet's test costs its part and names itself") {
  const auto one = asked({"fouchet"});
  const std::string read = write("fouchet", "1+");
  check_slip(played(one, mix + tube + barium(1) + turn + wait(300) + lay + drops(2) + wait(30) + read),
             "fouchet.barium", "too little", 50);
  check_slip(played(one, mix + tube + barium(2.5) + wait(300) + lay + drops(2) + wait(30) + read),
             "fouchet.mixed", "not mixed", 20);
  check_slip(played(one, mix + tube + barium(2.5) + turn + wait(60) + lay + drops(2) + wait(30) + read),
             "fouchet.stood", "1 min 10 s", 50);
  check_slip(played(one, mix + tube + barium(2.5) + turn + wait(300) + lay + wait(30) + read), "fouchet.drop",
             "No Fouchet's reagent", 100);
  check_slip(played(one, mix + tube + barium(2.5) + turn + wait(300) + lay + drops(2) + wait(200) + read),
             "fouchet.time", "within a minute", 50);
}

TEST_CASE("A filter paper from another tube is no test of Fouchet's") {
  const auto report =
      played(asked({"fouchet"}), mix + tube + lay + drops(2) + wait(30) + write("fouchet", "1+"));
  CHECK(report.tubes.front().learner_vessel.empty());
}

TEST_CASE("pH by paper is read and marked in half units") {
  const auto* rule = standards().rules.find_test("ph_paper");
  REQUIRE(rule != nullptr);
  CHECK(rule->words.size() == 10);
  CHECK(rule->ordinal.grades == 10);
  auto urine = asked({"ph_paper"});
  urine.specimen.target_ph = 7.5;
  const std::string slip_of_paper = R"({"do":"dip","paper":"ph","vessel":"specimen","seconds":1})"
                                    "\n";
  const auto earned = [&](const std::string& word) {
    return played(urine, slip_of_paper + wait(20) + write("ph_paper", word)).earned(Ledger::Reading);
  };
  const int full = earned("7.5");
  CHECK(full == asked({"ph_paper"}).marking.grade_weight);
  CHECK(earned("7") < full);       // Half a unit off,
  CHECK(earned("7") > full / 2);   // acceptable;
  CHECK(earned("6.5") < full / 2); // a whole one is an error,
  CHECK(earned("5.5") == 0);       // two a gross one.
  CHECK(earned("9") == 0);
}
