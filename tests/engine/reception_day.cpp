// The 24-hour exercise: each line from the learner's own line before it.
#include "reception_support.hpp"

#include "engine/reception/day.hpp"

#include <algorithm>
#include <map>

using namespace matula;
using reception::DayLine;
using reception::DayRecord;

namespace {

using Written = std::map<std::string, std::string>;

std::vector<DayLine> marked(const DayRecord& day, const Written& written) {
  return reception::mark_day(day, test::book().day, [&](const std::string& item) {
    const auto found = written.find(item);
    return found == written.end() ? std::string() : found->second;
  });
}

DayLine line(const DayRecord& day, const Written& written, const std::string& item) {
  const auto lines = marked(day, written);
  const auto found =
      std::find_if(lines.begin(), lines.end(), [&](const DayLine& one) { return one.item == item; });
  REQUIRE(found != lines.end());
  return *found;
}

bool says(const DayLine& line, const std::string& words) {
  INFO(line.reason);
  return !line.right && line.reason.find(words) != std::string::npos;
}

/// 1200 mL of 3.5 g/L protein and 1 g/L creatinine, 70 kg, a man.
DayRecord worked_day() {
  DayRecord day = test::good_day(3.5, 1);
  day.sex = "male";
  return day;
}

const Written right{{"day.counts.1", "no"},      {"day.counts.2", "yes"},  {"day.counts.3", "yes"},
                    {"day.counts.4", "yes"},     {"day.counts.5", "yes"},  {"day.volume_ml", "1200"},
                    {"day.creatinine_g", "1.2"}, {"day.protein_g", "4.2"}, {"day.index_mg_per_kg", "17.1"},
                    {"day.complete", "yes"},     {"day.band", "heavy"}};

Written but(const std::string& item, const std::string& value) {
  Written written = right;
  written[item] = value;
  return written;
}

} // namespace

TEST_CASE("Every line of the worked day is right, in either way of writing a number") {
  for (const auto& one : marked(worked_day(), right)) {
    INFO(one.item << ": " << one.reason);
    CHECK(one.right);
    CHECK(one.reason.empty());
  }
  CHECK(line(worked_day(), but("day.protein_g", "4,2 g"), "day.protein_g").right);
  CHECK(marked(worked_day(), right).size() == reception::day_items(worked_day()).size());
}

TEST_CASE("Nothing written earns nothing, and says what was due") {
  for (const auto& one : marked(worked_day(), {})) {
    INFO(one.item);
    CHECK_FALSE(one.right);
    CHECK_FALSE(one.reason.empty());
  }
}

TEST_CASE("A slip in the volume is paid for once") {
  auto written = but("day.volume_ml", "1500"); // The void at the start added.
  written["day.creatinine_g"] = "1.5";
  written["day.index_mg_per_kg"] = "21.4";
  written["day.protein_g"] = "5.25";
  const auto lines = marked(worked_day(), written);
  CHECK(std::count_if(lines.begin(), lines.end(), [](const DayLine& one) { return !one.right; }) == 1);
  CHECK(says(line(worked_day(), written, "day.volume_ml"), "it was thrown away"));
}

TEST_CASE("Known slips are called by their names") {
  const auto slip = [](const char* item, const char* value, const char* words) {
    INFO(item << " = " << value);
    CHECK(says(line(worked_day(), but(item, value), item), words));
  };
  slip("day.volume_ml", "1.2", "in litres");
  slip("day.volume_ml", "900", "was left out");
  slip("day.protein_g", "4200", "from millilitres into litres");
  slip("day.protein_g", "0.42", "g/L is not g/dL");
  slip("day.protein_g", "42", "ten times too much");
  slip("day.protein_g", "3.5", "not multiplied by the volume");
  slip("day.protein_g", "2.92", "divided by the volume");
  slip("day.protein_g", "1.2", "other substance");
  slip("day.index_mg_per_kg", "84", "multiplied by the weight");
  slip("day.index_mg_per_kg", "0.0171", "not turned into milligrams");
}

TEST_CASE("A volume in litres does not spoil the lines after it") {
  const auto written = but("day.volume_ml", "1.2");
  CHECK_FALSE(line(worked_day(), written, "day.volume_ml").right);
  CHECK(line(worked_day(), written, "day.protein_g").right);
}

TEST_CASE("Complete: the voids counted are those in the bottle, and the index fits") {
  CHECK(says(line(worked_day(), but("day.complete", "no"), "day.complete"), "within the 14 to 26"));
  DayRecord heavy_man = worked_day();
  heavy_man.weight_kg = 100; // 12 mg/kg
  CHECK(says(line(heavy_man, {{"day.complete", "yes"}}, "day.complete"), "outside"));
  CHECK(line(heavy_man, {{"day.complete", "no"}}, "day.complete").right);
  heavy_man.sex = "female"; // 11 to 20
  CHECK(line(heavy_man, {{"day.complete", "yes"}}, "day.complete").right);
  DayRecord lost = worked_day();
  lost.voids[2].kept = false;
  CHECK(line(lost, {{"day.complete", "no"}}, "day.complete").right);
}

TEST_CASE("Bands: between three and four grams books disagree, and both are taken") {
  const auto bands = [](double g) { return reception::bands_of(g, test::book().day); };
  using Keys = std::vector<std::string>;
  CHECK(bands(0.1) == Keys{"normal"});
  CHECK(bands(0.3) == Keys{"minimal"});
  CHECK(bands(2) == Keys{"moderate"});
  CHECK(bands(3.5) == Keys{"moderate", "heavy"});
  CHECK(bands(4.2) == Keys{"heavy"});
  CHECK(says(line(worked_day(), but("day.band", "moderate"), "day.band"), "in other books 3 to 3.5 g"));
}

TEST_CASE("Day and night in two bottles") {
  DayRecord day = test::good_day(0.5, 1);
  for (auto& one : day.voids) {
    one.bottle = "day";
  }
  day.voids.back().bottle = "night";
  day.voids.back().protein_g_per_l = 0.05;
  const auto bottles = reception::bottles_of(day);
  REQUIRE(bottles.size() == 2);
  CHECK(bottles[0].volume_ml == Approx(900));
  CHECK(bottles[0].hours == Approx(16)); // 7 to 23
  CHECK(bottles[1].hours == Approx(8));
  const Written written{
      {"day.day_ml", "900"},         {"day.night_ml", "300"},          {"day.volume_ml", "1200"},
      {"day.day_protein_g", "0.45"}, {"day.night_protein_g", "0.015"}, {"day.protein_g", "0.465"},
      {"day.pattern", "postural"}};
  for (const auto& [item, value] : written) {
    CHECK(line(day, written, item).right);
  }
  day.voids.back().protein_g_per_l = 0.4;
  CHECK(line(day, {{"day.pattern", "constant"}}, "day.pattern").right);
  // 50 mg in 8 hours lying down: from memory of textbooks of nephrology.
  CHECK(reception::pattern_of(30, 6.2, test::book().day) == "postural");
  CHECK(reception::pattern_of(30, 6.3, test::book().day) == "constant");
  CHECK(reception::pattern_of(5, 5, test::book().day) == "none");
}

TEST_CASE("Keeping the first void adds half a void interval or more") {
  DayRecord day = worked_day();
  CHECK(reception::balance_of(day).volume_error() == Approx(0));
  day.voids.front().kept = true;
  CHECK(reception::balance_of(day).volume_error() == Approx(0.25)); // 1500 for 1200
  CHECK(reception::balance_of(day).protein_error() == Approx(0.25));
}

TEST_CASE("Clock times") {
  CHECK(reception::clock_from_text("07:40") == 460);
  CHECK(reception::clock_from_text("07:40 day 2") == 1900);
  for (const char* wrong :
       {"", "7:40", "24:00", "07:60", "07.40", "07:40 day", "07:40 day 0", "07:40 day 22"}) {
    INFO(wrong);
    CHECK_FALSE(reception::clock_from_text(wrong));
  }
  CHECK(reception::say_clock(1900) == "07:40 day 2");
}

TEST_CASE("Where the protein is the learner's to measure, the grams go on from the learner's own figure") {
  DayRecord day = worked_day();
  day.protein_item = "turbidity.value";
  day.protein_unit = "mg/dL";
  day.protein_g_per_l_of_unit = 0.01;
  Written written = right;
  written["turbidity.value"] = "300"; // 3 g/L, though the bottle holds 3.5
  written["day.protein_g"] = "3.6";
  CHECK(line(day, written, "day.protein_g").right);
  written["day.band"] = "moderate";
  CHECK(line(day, written, "day.band").right);
  written["day.protein_g"] = "4.2";
  CHECK(says(line(day, written, "day.protein_g"), "300 mg/dL, that is 3 g/L"));
  written["day.protein_g"] = "360";
  CHECK_FALSE(line(day, written, "day.protein_g").right);
  written.erase("turbidity.value"); // nothing of one's own: what the bottle holds
  written["day.protein_g"] = "4.2";
  CHECK(line(day, written, "day.protein_g").right);
}
