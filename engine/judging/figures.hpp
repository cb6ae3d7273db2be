#pragma once

#include "engine/judging/rules.hpp"
#include "engine/learner/confusion.hpp"
#include "engine/learner/lines.hpp"
#include "engine/records/views.hpp"
#include "engine/statistics/agreement.hpp"
#include "engine/statistics/items.hpp"
#include "engine/statistics/resample.hpp"

#include <optional>
#include <string>
#include <vector>

namespace matula::judging {

/// A figure and the interval that students drawn anew give it.
struct WithInterval {
  double value = 0;
  std::optional<statistics::Interval> interval;
};

/// How a class read one test: rows are what the tubes showed, columns what was written.
struct TestAgreement {
  std::string test;  ///< "ssa"
  std::string title; ///< "Sulfosalicylic acid"
  std::vector<std::string> words;
  statistics::PairTable table{0};
  int readings = 0;
  int unwritten = 0; ///< Tubes that stood there and were not named.
  int students = 0;
  int missed_findings = 0;
  int false_alarms = 0;
  std::optional<statistics::PlainAgreement> plain; ///< Exact, within one, bias.
  std::optional<WithInterval> kappa_linear;        ///< Nothing for few readings.
  std::optional<WithInterval> kappa_quadratic;
  std::optional<WithInterval> gwet_linear; ///< AC2: also where nearly everything is of one grade.
};

/// One item of a case.
struct ItemView {
  std::string item;
  std::string label;
  scoring::Ledger ledger = scoring::Ledger::Reading;
  int students = 0;
  double right = 0;                ///< Share of the students who had it right.
  std::optional<double> with_rest; ///< Corrected correlation with the other items; nothing for few students.
  std::string favourite_wrong;     ///< What was written most by those who had it wrong,
  int favourite_times = 0;         ///< and how often.
  std::string behaved_badly;       ///< In words; empty when it did not.
};

/// All items of one case, of the first sitting each student handed in at it.
struct CaseView {
  std::string exercise;
  int students = 0;
  std::optional<double> kr20;
  std::optional<double> error; ///< Standard error of measurement, in items.
  std::vector<ItemView> items;
};

/// A student among the others.
struct StudentView {
  records::StudentSum sum;
  int mean = 0; ///< Per mille, of all graded readings.
  std::vector<learner::GroupLines> lines;
};

/// What the class would come to with another pass mark. Missed findings and safety are asked for as ever.
struct StandardStep {
  int mark = 0;       ///< Per mille.
  double passed = 0;  ///< Share of the sittings.
  double by_mean = 0; ///< Share whose mean alone would do.
};
struct StandardView {
  int sittings = 0;
  int passed = 0;
  int failed_by_findings = 0; ///< Whose mean would do and who missed too many findings,
  int failed_by_safety = 0;   ///< or were stopped.
  int borderline = 0;         ///< Mean close to the mark.
  int mark = 0;
  std::vector<StandardStep> steps;
};

/// A class as its teacher looks at it.
struct ClassView {
  std::string exercise; ///< What was asked about; empty for all.
  std::string label;
  int sittings = 0;
  int readings = 0;
  std::vector<TestAgreement> tests;
  std::vector<CaseView> cases;
  bool cases_left_out = false; ///< There are too many sittings for their items at one look: ask for one case.
  std::vector<records::FaultCount> faults; ///< Dearest first; every lost mark is charged to one.
  std::vector<learner::GroupLines> lines;  ///< Of the class as one reader.
  std::vector<learner::Swap> swaps;
  std::vector<StudentView> students;
  StandardView standard;
};

/// What judging is done by.
struct Basis {
  std::vector<scoring::TestRule> tests;
  scoring::PassRule pass;
  Rules rules;
  learner::Rules lines;
};

[[nodiscard]] tl::expected<Basis, scenario::Problems> load_basis(const std::filesystem::path& assets_folder);

/// Whether the items of every case are wanted however many sittings there are, which takes seconds for a
/// department of many years, or only while a look is quick (Rules::sittings_at_once).
enum class Items { All, While_quick };

/// Everything. The same store gives the same figures.
[[nodiscard]] ClassView judge(records::Store& store, const records::Scope& scope, const Basis& basis,
                              Items items = Items::While_quick);

// The parts of it.
[[nodiscard]] std::vector<TestAgreement> agreement_of(const std::vector<records::PairCount>& counts,
                                                      const std::map<long long, std::string>& items,
                                                      const Basis& basis);
[[nodiscard]] std::vector<CaseView> cases_of(const std::vector<records::ItemMark>& marks, const Rules& rules);
[[nodiscard]] StandardView standard_of(const std::vector<records::StandingCount>& counts, const Basis& basis);

} // namespace matula::judging
