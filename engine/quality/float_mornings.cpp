#include "engine/quality/float_mornings.hpp"

#include "engine/strict/table.hpp"
#include "sim/instrument/buoyancy.hpp"
#include "sim/matter/density.hpp"

#include <fmt/format.h>

#include <cmath>

namespace matula::quality {

namespace {

constexpr double half_division = 0.0005;
constexpr double rounding = 1e-9;
constexpr double bare_error_below = 0.5; // A reading lies near 1, an error near 0.

FloatSeries read_series(const strict::Table& row) {
  FloatSeries series;
  series.key = row.text("key");
  series.title = row.text("title");
  series.story = row.text("story");
  series.calibration_c = row.number("calibration_c", {10, 27, "°C"});
  series.remedy = row.text("remedy");
  (void)row.text("source");
  const auto water = row.numbers_or_none("water_c", {5, 40, "°C"});
  const auto errors = row.numbers("zero_errors", {-0.01, 0.01, ""}, water.size());
  for (std::size_t i = 0; i < water.size() && i < errors.size(); ++i) {
    series.mornings.push_back({water[i], errors[i]});
  }
  if (series.mornings.empty()) {
    row.complain("water_c", "the temperature of the water each morning, at least one");
  }
  return series;
}

std::string should(FloatVerdict verdict) {
  return verdict == FloatVerdict::Good      ? "use it as it is"
         : verdict == FloatVerdict::Correct ? "use it and take the error off every reading"
                                            : "throw it away";
}

} // namespace

std::string to_word(FloatVerdict verdict) {
  return verdict == FloatVerdict::Good ? "good" : verdict == FloatVerdict::Correct ? "correct" : "discard";
}

tl::expected<std::vector<FloatSeries>, scenario::Problems>
load_floats(const std::filesystem::path& assets_folder) {
  strict::File file(assets_folder / "quality" / "floats.toml");
  std::vector<FloatSeries> all;
  for (const strict::Table& row : file.root().tables("float")) {
    all.push_back(read_series(row));
  }
  scenario::Problems problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return all;
}

double morning_reading(const FloatSeries& series, const FloatMorning& morning,
                       instrument::Urinometer urinometer) {
  urinometer.calibration_c = series.calibration_c;
  urinometer.zero_error = morning.zero_error;
  instrument::Bath water;
  water.temperature_c = morning.water_c;
  water.density_kg_m3 = matter::water_density_kg_m3(morning.water_c);
  water.surface_tension_mn_m = matter::water_surface_tension_mn_m(morning.water_c);
  const double seen = instrument::printed_reading(urinometer, instrument::rest_mm(urinometer, water, 0));
  return std::round(seen / half_division) * half_division;
}

FloatJudged judge_float(double reading, double water_c, double calibration_c, const FloatEntry& entry) {
  const FloatCheck check = check_float(reading, water_c, calibration_c);
  FloatJudged judged;
  const double off = reading - check.expected;
  std::optional<double> own = entry.error;
  if (own && std::abs(*own) > bare_error_below) {
    own = *own - check.expected;
  }
  // Half a division may be rounded either way.
  judged.error_right = own && std::abs(*own - off) <= 2 * half_division + rounding;
  const double from = own.value_or(check.zero_error);
  judged.decision_right = entry.decision == float_verdict(from);
  const std::string must = std::abs(water_c - calibration_c) < 1
                               ? std::string("1.000")
                               : fmt::format("{:.4f} (water at {:g} °C in a float made for {:g} °C)",
                                             check.expected, water_c, calibration_c);
  if (!own) {
    judged.words = fmt::format("No error was written. Water must read {}; it read {:.4f}, {:+.3f} off. ",
                               must, reading, check.zero_error);
  } else if (!judged.error_right) {
    const bool sign = std::abs(*own + off) <= 2 * half_division && std::abs(off) > half_division;
    judged.words =
        fmt::format("Water must read {}; it read {:.4f}, so the error is {:+.3f}, not {:+.3f}{}. ", must,
                    reading, check.zero_error, *own,
                    sign ? ": the sign is turned round, a float that reads too high has a plus" : "");
  }
  if (!judged.decision_right) {
    judged.words += fmt::format(
        "With an error of {:+.3f}: {}. A float that water holds at its mark is used as it is, 0.001 or "
        "0.002 is written down and taken off every reading, more is thrown away.",
        from, should(float_verdict(from)));
  }
  if (judged.words.empty()) {
    judged.words = "Right. " + check.words;
  }
  return judged;
}

} // namespace matula::quality
