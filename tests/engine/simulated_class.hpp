#pragma once

// A class of two hundred with planted faults, as its sittings would be marked: intensities and words are
// drawn with a seed, all marks follow by the program's own rules.

#include "engine/judging/figures.hpp"
#include "engine/records/squeeze.hpp"
#include "engine/scoring/roots.hpp"
#include "tests/published/statistics_support.hpp"

#include <string>
#include <vector>

namespace matula::test {

struct SimulatedClass {
  static constexpr int students = 200;
  static constexpr int cases = 24;
  static constexpr int low_readers = 20;    ///< The first: call what shows 2+ protein 1+.
  static constexpr int early_heaters = 60;  ///< The last: stop the boiling too soon in the first case.
  static constexpr int missers = 5;         ///< Read well, and miss one finding.
  static constexpr double swap_share = 0.3; ///< Of yellow and orange tubes, by everybody.
  static constexpr const char* keyed_wrongly = "decision.meaning"; ///< In the first case.
  static constexpr const char* missed_by_all = "decision.next";    ///< In the second.

  std::vector<records::Marked> sittings;
  std::vector<std::string> names;
};

inline std::string student_name(int student) {
  std::string digits = std::to_string(student);
  return "student-" + std::string(3 - digits.size(), '0') + digits;
}

class ClassMaker {
public:
  explicit ClassMaker(const judging::Basis& basis) : basis_(basis), dice_(200) {}

  SimulatedClass make() {
    SimulatedClass all;
    for (int student = 0; student < SimulatedClass::students; ++student) {
      const double skill = dice_.normal();
      for (int number = 0; number < SimulatedClass::cases; ++number) {
        all.sittings.push_back(sit(student, number, skill));
      }
      all.names.push_back(student_name(student));
    }
    return all;
  }

private:
  const scoring::TestRule& test(const std::string& key) const {
    for (const auto& one : basis_.tests) {
      if (one.key == key) {
        return one;
      }
    }
    throw std::out_of_range(key);
  }

  scoring::Mark graded(const std::string& key, double intensity, int read) {
    const auto& rule = test(key);
    scoring::Mark mark;
    mark.ledger = scoring::Ledger::Reading;
    mark.item = rule.item();
    mark.label = "Grade of the " + rule.label;
    mark.possible = 20;
    scoring::Graded graded;
    graded.truth = std::min(5, std::max(0, static_cast<int>(intensity + 0.5)));
    graded.intensity = intensity;
    for (std::size_t y = 0; y < rule.words.size(); ++y) {
      graded.answers.push_back(
          scoring::score_intensity(intensity, static_cast<reading::Grade>(y), rule.ordinal).per_mille);
    }
    const auto result = scoring::score_intensity(intensity, static_cast<reading::Grade>(read), rule.ordinal);
    graded.read = read;
    graded.per_mille = result.per_mille;
    graded.missed_finding = result.missed_finding;
    graded.false_alarm = result.false_alarm;
    mark.earned = result.per_mille * mark.possible / 1000;
    mark.entered = rule.words[static_cast<std::size_t>(read)];
    mark.expected = rule.words[static_cast<std::size_t>(graded.truth)];
    mark.graded = graded;
    return mark;
  }

  static scoring::Mark plain(scoring::Ledger ledger, const std::string& item, const std::string& label,
                             bool right, const std::string& entered) {
    scoring::Mark mark;
    mark.ledger = ledger;
    mark.item = item;
    mark.label = label;
    mark.possible = 10;
    mark.earned = right ? 10 : 0;
    mark.entered = entered;
    return mark;
  }

  int read_cloud(int student, double intensity) {
    statistics_tests::Reader eye;
    eye.spread = 0.3;
    if (student < SimulatedClass::low_readers) {
      eye.line[2] = 3.4; // What shows 2+, from 2.5 to 3.5, is still called 1+.
    }
    return eye.read(dice_, intensity);
  }

  int read_copper(double intensity) {
    statistics_tests::Reader eye;
    eye.spread = 0.3;
    int grade = eye.read(dice_, intensity);
    if ((grade == 3 || grade == 4) && dice_.even() < SimulatedClass::swap_share) {
      grade = 7 - grade;
    }
    return grade;
  }

  void add_decisions(scoring::Report& report, int number, double skill) {
    const auto knows = [&](double difficulty) {
      return dice_.even() < 1 / (1 + std::exp(-1.7 * (skill - difficulty)));
    };
    for (int i = 0; i < 8; ++i) { // Sound items, from easy to hard.
      const bool right = knows(-1.2 + 0.3 * i);
      report.marks.push_back(plain(scoring::Ledger::Interpretation, "decision.sound-" + std::to_string(i),
                                   "Question " + std::to_string(i), right, right ? "a" : "b"));
    }
    if (number == 0) { // The key says "both"; whoever knows the subject writes "protein".
      const bool able = knows(0);
      report.marks.push_back(plain(scoring::Ledger::Interpretation, SimulatedClass::keyed_wrongly,
                                   "What do the findings mean?", !able && dice_.even() < 0.6, ""));
      auto& mark = report.marks.back();
      mark.entered = able ? "protein" : mark.earned > 0 ? "both" : "sugar";
      mark.expected = "both";
    }
    if (number == 1) {
      const bool right = dice_.even() < 0.02;
      report.marks.push_back(plain(scoring::Ledger::Interpretation, SimulatedClass::missed_by_all,
                                   "Which further test?", right, right ? "quantity" : "culture"));
    }
  }

  records::Marked sit(int student, int number, double skill) {
    records::Marked one;
    auto& report = one.report;
    for (const char* const key : {"heat", "ssa"}) {
      const double x = 0.1 + 5.2 * dice_.even();
      report.marks.push_back(graded(key, x, read_cloud(student, x)));
    }
    double x = 0.1 + 5.2 * dice_.even();
    int read = read_copper(x);
    if (number == 2 && student >= 100 && student < 100 + SimulatedClass::missers) {
      x = 3.0; // A finding, and nothing written of it; the other two are read to the grade.
      read = 0;
      report.marks[0] = graded("heat", 2.0, 2);
      report.marks[1] = graded("ssa", 2.0, 2);
    }
    report.marks.push_back(graded("benedict", x, read));
    add_decisions(report, number, skill);
    if (number == 0) {
      const bool early = student >= SimulatedClass::students - SimulatedClass::early_heaters;
      report.marks.push_back(
          plain(scoring::Ledger::Process, "process.heat.boil", "Boiling in the heat test", !early, ""));
    }
    for (auto& mark : report.marks) {
      if (mark.earned < mark.possible) {
        mark.root = mark.item;
        mark.root_words = mark.label;
      }
    }
    report.losses = scoring::losses_by_root(report.marks);
    report.findings = scoring::findings_of(report.marks);
    report.standing = scoring::standing_of(report.marks, basis_.pass, false);
    one.incoming.pseudonym = student_name(student);
    one.incoming.exercise = "case-" + std::to_string(number);
    one.incoming.scenario_text = "simulated";
    one.incoming.scenario_file = one.incoming.exercise + ".toml";
    one.incoming.label = "simulated";
    one.incoming.log_text = one.incoming.pseudonym + '/' + one.incoming.exercise + '\n';
    one.scenario_name = records::content_name(one.incoming.scenario_text);
    one.scenario_title = "Simulated";
    one.log_name = records::content_name(one.incoming.log_text);
    one.handed_in = true;
    one.rubric = {"rubric", "world", "simulated"};
    return one;
  }

  const judging::Basis& basis_;
  statistics_tests::Dice dice_;
};

} // namespace matula::test
