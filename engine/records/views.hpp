#pragma once

#include "engine/records/store.hpp"

#include <cstdint>

namespace matula::records {

/// How often one student read one truth so, of one item.
struct PairCount {
  long long item = 0;
  long long student = 0;
  int truth = 0;
  int read = -1; ///< -1 where nothing was written.
  int times = 0;
  int missed = 0;
  int false_alarms = 0;
};

/// What was lost by one fault.
struct FaultCount {
  std::string root;
  std::string label;
  int students = 0;
  int times = 0;
  int lost = 0; ///< Marks.
};

/// One reading of a tube of known intensity, for a reader's own lines.
struct TubeRead {
  long long item = 0;
  long long student = 0;
  double intensity = 0;
  int read = 0;
};

/// One mark of one student in a case, of the latest sitting that counts.
struct ItemMark {
  long long student = 0;
  std::string exercise;
  std::string item;
  std::string label;
  scoring::Ledger ledger = scoring::Ledger::Reading;
  int earned = 0;
  int possible = 0;
  std::string entered;
  std::string expected;
};

/// Scores that count, summed by student.
struct StudentSum {
  long long student = 0;
  std::string pseudonym;
  int sittings = 0;
  int passed = 0;
  int readings = 0;
  long long per_mille = 0; ///< Mean times readings, over the sittings.
  int exact = 0;
  int within_one = 0;
  int missed = 0;
  int false_alarms = 0;
  int stops = 0;
};

/// How many sittings came to the same, as far as passing goes.
struct StandingCount {
  int mean = 0; ///< Per mille.
  int missed = 0;
  bool passed = false;
  bool safety_stop = false;
  bool read = false; ///< Whether anything graded was read at all.
  int times = 0;
};

/// Names of the items that occur, by their numbers: "ssa.grade".
[[nodiscard]] std::map<long long, std::string> item_names(Store& store);

[[nodiscard]] std::vector<PairCount> pair_counts(Store& store, const Scope& scope);
[[nodiscard]] std::vector<FaultCount> fault_counts(Store& store, const Scope& scope);
[[nodiscard]] std::vector<StudentSum> student_sums(Store& store, const Scope& scope);
[[nodiscard]] std::vector<StandingCount> standing_counts(Store& store, const Scope& scope);
/// Oldest first; at most the latest `most` of each item.
[[nodiscard]] std::vector<TubeRead> tubes_read(Store& store, const Scope& scope, int most);
/// Of the first sitting each student handed in at each case: later ones have been taught by it.
[[nodiscard]] std::vector<ItemMark> item_marks(Store& store, const Scope& scope);

/// Sum of what all stored readings earned: one plain pass over them, as a measure for the rest.
[[nodiscard]] long long plain_pass(Store& store);

} // namespace matula::records
