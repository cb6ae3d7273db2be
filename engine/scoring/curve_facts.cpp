#include "engine/scoring/curve_facts.hpp"

#include <algorithm>
#include <cmath>

namespace matula::scoring {
namespace {

double share_of(const TubeRead& read, const std::string& what) {
  double sum = 0;
  for (const auto& [origin, ml] : read.went_in) {
    sum += ml;
  }
  const auto found = read.went_in.find(what);
  return found == read.went_in.end() || sum <= 0 ? 0 : found->second / sum;
}

double reagent_share(const TubeRead& read, const TestRule& test) {
  const double reagent = reagent_ml(read.went_in, test);
  const double all = reagent + others_ml(read.went_in, test);
  return all > 0 ? reagent / all : 0;
}

/// Largest distance of a tube's share of reagent from their mean, in per cent of it.
double unevenness_percent(const std::vector<const TubeRead*>& tubes, const TestRule& test) {
  double mean = 0;
  for (const auto* tube : tubes) {
    mean += reagent_share(*tube, test) / static_cast<double>(tubes.size());
  }
  double worst = 0;
  for (const auto* tube : tubes) {
    worst = std::max(worst, std::abs(reagent_share(*tube, test) - mean));
  }
  constexpr double percent = 100;
  return mean > 0 ? percent * worst / mean : 0;
}

void add_tubes(Facts& facts, const std::vector<const TubeRead*>& tubes, const TestRule& test) {
  if (tubes.empty()) {
    return;
  }
  double soonest = tubes.front()->since_addition_s;
  double latest = soonest;
  double off_nm = 0;
  int unmixed = 0;
  int without_zero = 0;
  for (const auto* tube : tubes) {
    soonest = std::min(soonest, tube->since_addition_s);
    latest = std::max(latest, tube->since_addition_s);
    off_nm = std::max(off_nm, std::abs(tube->wavelength_nm - test.curve->wavelength_nm));
    unmixed += tube->mixed ? 0 : 1;
    without_zero += tube->zero_set ? 0 : 1;
  }
  facts["soonest_read_s"] = soonest;
  facts["latest_read_s"] = latest;
  facts["off_wavelength_nm"] = off_nm;
  facts["tubes_unmixed"] = unmixed;
  facts["tubes_without_zero"] = without_zero;
  facts["reagent_uneven_percent"] = unevenness_percent(tubes, test);
}

void add_sample(Facts& facts, const TestRule& test, const PhotometerBook& book) {
  constexpr double percent = 100;
  constexpr double far_beyond = 1000;
  const auto* sample = book.last(test, TubeRole::Sample);
  const auto* blank = book.last(test, TubeRole::Blank);
  const auto* top = book.last(test, TubeRole::Standard, test.curve->standards.size() - 1);
  facts["blank_read"] = blank != nullptr ? 1 : 0;
  if (sample == nullptr) {
    return;
  }
  facts["times_diluted"] = times_diluted(*sample, test);
  if (top != nullptr && top->value > 0) {
    const double net = sample->value - (blank != nullptr ? blank->value : 0);
    facts["sample_percent_of_top"] = sample->off_scale ? far_beyond : percent * net / top->value;
  }
  if (const double urine = share_of(*sample, "specimen"); blank != nullptr && urine > 0) {
    facts["blank_urine_percent"] = percent * share_of(*blank, "specimen") / urine;
  }
}

} // namespace

Facts curve_facts(const TestRule& test, const PhotometerBook& book) {
  Facts facts;
  std::vector<const TubeRead*> tubes;
  int against_urine = 0;
  for (std::size_t i = 0; i < test.curve->standards.size(); ++i) {
    if (const auto* read = book.last(test, TubeRole::Standard, i); read != nullptr) {
      tubes.push_back(read);
      against_urine += read->zero_went_in.count("specimen") > 0 ? 1 : 0;
    }
  }
  facts["standards_read"] = static_cast<double>(tubes.size());
  facts["standards_against_urine"] = against_urine;
  if (const auto* sample = book.last(test, TubeRole::Sample); sample != nullptr) {
    tubes.push_back(sample);
  }
  add_tubes(facts, tubes, test);
  add_sample(facts, test, book);
  return facts;
}

} // namespace matula::scoring
