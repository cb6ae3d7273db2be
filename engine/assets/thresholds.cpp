#include "engine/assets/readers.hpp"

#include <algorithm>

namespace matula::assets {

namespace {

const strict::Range share{0, 1, ""};

double sourced(const strict::Table& table, const std::string& key, const strict::Range& range) {
  const strict::Table row = table.table(key);
  (void)row.text("source");
  return row.number("value", range);
}

/// A list that falls from left to right, as the words of a scale do.
std::vector<double> sourced_falling(const strict::Table& table, const std::string& key,
                                    const strict::Range& range, std::size_t count) {
  const strict::Table row = table.table(key);
  (void)row.text("source");
  std::vector<double> values = row.numbers("value", range, count);
  if (!std::is_sorted(values.rbegin(), values.rend())) {
    row.complain("value", "values that fall from left to right");
  }
  return values;
}

reading::NamedColour read_colour(const strict::Table& row) {
  reading::NamedColour colour;
  colour.word = row.text("word");
  (void)row.text("source");
  const std::vector<double> lab = row.numbers("lab", {-128, 128, ""}, 3);
  colour.centre = {lab[0], lab[1], lab[2]};
  return colour;
}

} // namespace

void read_thresholds(const std::filesystem::path& file, reading::Thresholds& thresholds,
                     scenario::Problems& problems) {
  strict::File toml(file);
  const strict::Table root = toml.root();
  const strict::Table cloud = root.table("cloud");
  thresholds.veil_trace = sourced(cloud, "veil_trace", share);
  thresholds.dark_surround = sourced(cloud, "dark_surround", share);
  thresholds.print_contrast_1plus = sourced(cloud, "print_contrast_1plus", share);
  thresholds.granularity_2plus = sourced(cloud, "granularity_2plus", share);
  thresholds.floc_size_3plus_mm = sourced(cloud, "floc_size_3plus_mm", {0, 10, "mm"});
  thresholds.clot_fraction_4plus = sourced(cloud, "clot_fraction_4plus", share);
  thresholds.clot_fraction_3plus = sourced(cloud, "clot_fraction_3plus", share);
  thresholds.settled_share_2plus = sourced(cloud, "settled_share_2plus", share);
  thresholds.settled_share_3plus = sourced(cloud, "settled_share_3plus", share);
  const strict::Table copper = root.table("copper");
  thresholds.copper_print_trace = sourced(copper, "print_contrast_trace", share);
  const std::vector<double> hues =
      sourced_falling(copper, "hue_deg", {0, 360, "degrees"}, thresholds.copper_hue_deg.size());
  std::copy(hues.begin(), hues.end(), thresholds.copper_hue_deg.begin());
  const std::vector<double> stood =
      sourced_falling(copper, "stood_hue_deg", {0, 360, "degrees"}, thresholds.copper_stood_hue_deg.size());
  std::copy(stood.begin(), stood.end(), thresholds.copper_stood_hue_deg.begin());
  const strict::Table shares = copper.table("stood_share");
  (void)shares.text("source");
  const std::vector<double> settled =
      shares.numbers("value", {0.01, 1, ""}, thresholds.copper_stood_share.size());
  std::copy(settled.begin(), settled.end(), thresholds.copper_stood_share.begin());
  const auto beds =
      sourced_falling(copper, "bed_hue_deg", {0, 360, "degrees"}, thresholds.copper_bed_hue_deg.size());
  std::copy(beds.begin(), beds.end(), thresholds.copper_bed_hue_deg.begin());
  const std::vector<double> clarity =
      sourced_falling(root.table("clarity"), "contrast", share, thresholds.clarity_contrast.size());
  std::copy(clarity.begin(), clarity.end(), thresholds.clarity_contrast.begin());
  for (const strict::Table& row : root.tables("urine_colour")) {
    thresholds.urine_colours.push_back(read_colour(row));
  }
  close(toml, problems);
}

} // namespace matula::assets
