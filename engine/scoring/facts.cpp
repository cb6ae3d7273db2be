#include "engine/scoring/facts.hpp"

#include <algorithm>
#include <array>

namespace matula::scoring {
namespace {

constexpr std::array<std::string_view, 70> names{
    // A test tube, up to the moment its grade was written.
    "urine_ml", "water_ml", "reagent_ml", "acid_drops", "acid_drops_if_any", "acid_per_urine",
    "acid_after_boiling", "hot_after_acid_s", "seconds_above_90c", "seconds_above_90c_with_urine",
    "boiling_s", "heated_s", "in_bath_s", "in_flame_s", "hottest_c", "boil_over_ml",
    "mixed_after_last_addition", "poured_gently", "seconds_since_last_addition", "reagent_heated_alone",
    "looked_on_black", "looked_on_white", "temperature_at_first_use_c",
    // A test paper, when its grade was written.
    "dip_s", "blotted", "paper_age_s", "specimen_c_at_dip", "mixed_before_dip", "stood_before_filter_s",
    "drops_on_paper", "since_drop_s",
    // The tubes of a curve of standards, each as it was last read.
    "blank_read", "standards_read", "standards_against_urine", "soonest_read_s", "latest_read_s",
    "off_wavelength_nm", "tubes_unmixed", "tubes_without_zero", "reagent_uneven_percent",
    "sample_percent_of_top", "blank_urine_percent", "times_diluted",
    // The urinometer, when the reading was written.
    "zero_checked", "jar_ml", "jar_grounded", "float_touches_wall", "float_wiped", "float_spun", "bubble_ml",
    "eye_off_mm", "thermometer_used", "degrees_from_float",
    // The specimen.
    "specimen_mixed", "smelled_before_odour",
    // The whole sitting.
    "pointed_at_person_s", "heated_without_goggles", "acid_without_goggles", "handled_without_gloves",
    "flame_left_on", "held_still_s", "goggles_off_at_s", "gloves_off_at_s", "opened_outside_hood",
    "flammable_near_flame", "wrong_bin", "cyanide_freed", "chlorine_freed", "spill_left_ml",
    "unbalanced_rotor"};

} // namespace

bool is_fact(std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

std::string all_facts() {
  std::string all;
  for (const auto name : names) {
    all += all.empty() ? "" : ", ";
    all += name;
  }
  return all;
}

} // namespace matula::scoring
