#pragma once

#include "engine/records/import.hpp"

namespace matula::records {

/// How one mark came out otherwise. Nothing where one of the two versions does not have it.
struct MarkChange {
  std::string item;
  std::string label;
  std::optional<int> earned_before, earned_now;
  std::optional<int> possible_before, possible_now;
};

/// One sitting marked anew.
struct Rescored {
  SittingRow before; ///< What counted until now.
  SittingRow now;
  std::vector<MarkChange> changes;

  [[nodiscard]] bool differs() const;
};

struct RescoreSum {
  int sittings = 0;
  int as_before = 0;             ///< The same marks and standing.
  int passed_before = 0;         ///< Of all of them,
  int passed_now = 0;            ///< and under the new marks.
  std::vector<Rescored> changed; ///< By number.
  std::vector<Refused> refused;
};

struct RescoreWishes {
  Scope scope;
  std::string
      other_scenario; ///< Text of a scenario with other weights, [marking] or decisions; empty: its own.
  int threads = 2;
  std::int64_t now_s = 0;
  bool on_trial = false; ///< Nothing is stored: the sum tells what would come of it.
};

/// Replays and marks stored sittings anew, by the rules of today and, if one is given, another text of their
/// scenario. The old scores are kept; the new ones count from now on. What differs is listed.
RescoreSum rescore(Store& store, Marker& marker, const RescoreWishes& wishes, const Progress& progress);
/// The same into a sum of the caller's, which holds what was done when `progress` leaves by an exception.
void rescore(Store& store, Marker& marker, const RescoreWishes& wishes, const Progress& progress,
             RescoreSum& sum);

/// What differs between two scores of one sitting.
[[nodiscard]] Rescored compare_scores(Store& store, const SittingRow& before, const SittingRow& now);

} // namespace matula::records
