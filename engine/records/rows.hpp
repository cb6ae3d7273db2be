#pragma once

#include "engine/scoring/report.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace matula::records {

/// A sitting as it comes in: read from a folder, or opened from a sealed result by the caller.
struct Incoming {
  std::string pseudonym;
  std::string exercise;      ///< Key of the case; parallel forms of one case share it.
  std::string scenario_text; ///< The instructor's own copy, never one that came with the sitting.
  std::string scenario_file; ///< What problems call it; its stem is the scenario's key.
  std::string log_text;
  std::string checks;     ///< What the caller found on the way, a JSON object; empty for none.
  std::string label;      ///< "spring 2027"; empty for none.
  std::string keep_until; ///< Last day it may be kept, "2027-09-30"; empty for no end.
  std::string came_from;  ///< For messages only; never stored.
};

/// By what rules, in what world and with which program a sitting was marked.
struct Rubric {
  std::string hash;    ///< Of the marking rules and procedures.
  std::string world;   ///< Of everything the world is made of.
  std::string program; ///< Version.
};

/// A sitting replayed and marked, ready to be stored.
struct Marked {
  Incoming incoming;
  std::string scenario_name; ///< content_name of the scenario's text.
  std::string scenario_title;
  std::string log_name;
  std::string begun_with; ///< Version of the program at which the student sat.
  bool handed_in = false;
  bool cut_off = false; ///< The last line of the log was cut short, and is left out.
  Rubric rubric;
  scoring::Report report;
};

/// One sitting in a list.
struct SittingRow {
  long long number = 0; ///< In the order of import, whatever the clock said.
  std::string pseudonym;
  std::string exercise;
  std::string title;
  std::string label;
  std::int64_t received_s = 0; ///< UTC, seconds since 1970.
  std::string keep_until;
  bool handed_in = false;
  long long continued_in = 0; ///< Number of the sitting that goes on where this one ends; 0 for none.
  std::string checks;
  Rubric rubric;
  std::string scenario_name;
  std::int64_t scored_s = 0;
  scoring::Standing standing;
  bool safety_stop = false;
  std::string why_not; ///< Why it is not passed; empty when it is.
  std::string ledgers; ///< "reading 60/80, ..."
};

/// One mark as stored; reasons come back by replay.
struct MarkRow {
  scoring::Ledger ledger = scoring::Ledger::Reading;
  std::string item;
  std::string label;
  int earned = 0;
  int possible = 0;
  std::string root; ///< Item of the fault a loss is charged to; empty for none.
  std::string entered;
  std::string expected;

  bool operator==(const MarkRow&) const = default;
};

/// One graded reading as stored.
struct ReadingRow {
  std::string item;
  int truth = 0;
  std::optional<int> read;
  double intensity = 0; ///< In grades, to the thousandth.
  int per_mille = 0;
  bool missed_finding = false;
  bool false_alarm = false;
  std::optional<bool> interpreted_right; ///< Of the case; nothing when it asks for no conclusion.
};

} // namespace matula::records
