#include "engine/classroom/sealed_run.hpp"
#include "engine/command/class_run.hpp"
#include "engine/command/exam_files.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/command/report.hpp"
#include "engine/command/returned_marks.hpp"
#include "engine/command/verbs.hpp"
#include "engine/records/trouble.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <ostream>

namespace matula::command {
namespace {

nlohmann::ordered_json sitting_json(const MarkedReturn& one) {
  const auto& returned = one.returned;
  nlohmann::ordered_json facts{{"file", returned.file},
                               {"pseudonym", returned.pseudonym},
                               {"label", returned.label},
                               {"case", returned.case_key},
                               {"closing_code", returned.closing_code},
                               {"to_be_reviewed", returned.to_be_reviewed()},
                               {"checks", examination::checks_json(returned.checks)}};
  if (one.report) {
    facts["marks"] = to_json(*one.report);
  } else {
    facts["not_marked_because"] = one.not_marked_because;
  }
  return facts;
}

void print_json(const MarkedFolder& folder, std::ostream& out) {
  nlohmann::ordered_json all{{"examination", folder.opened.pack.head.title},
                             {"pack", seal::hex(folder.opened.pack.head.id)},
                             {"rules_changed_since_sealing", folder.rules_changed()},
                             {"sittings", nlohmann::ordered_json::array()},
                             {"unreadable", nlohmann::ordered_json::array()},
                             {"outstanding", folder.opened.found.outstanding}};
  for (const auto& one : folder.marked) {
    all["sittings"].push_back(sitting_json(one));
  }
  for (const auto& problem : folder.opened.found.unreadable) {
    all["unreadable"].push_back(
        {{"file", problem.file}, {"found", problem.found}, {"wanted", problem.expected}});
  }
  out << all.dump(2) << '\n';
}

void print_ledgers(const scoring::Report& report, std::ostream& out) {
  for (const auto ledger : scoring::all_ledgers) {
    if (report.possible(ledger) > 0) {
      out << fmt::format("  {} {}/{}", scoring::to_word(ledger), report.earned(ledger),
                         report.possible(ledger));
    }
  }
  out << (report.standing.passed ? "  passed" : "  not passed") << '\n';
}

void print_text(const MarkedFolder& folder, bool in_records, std::ostream& out) {
  out << folder.opened.pack.head.title << '\n';
  if (folder.rules_changed()) {
    out << "The marking rules have changed since the pack was sealed; the marks are by the rules as now.\n";
  }
  for (const auto& one : folder.marked) {
    const auto& returned = one.returned;
    out << fmt::format("\n{}, {} ({}): {}\n", returned.pseudonym, returned.label, returned.case_key,
                       returned.to_be_reviewed() ? "to be reviewed" : "in order");
    out << check_words(returned);
    if (one.report) {
      print_ledgers(*one.report, out);
    } else {
      out << (in_records && returned.scenario_text.empty()
                  ? "  not taken in: the pack has no such case for this learner"
                  : (in_records ? "  " : "  not marked: ") + one.not_marked_because)
          << '\n';
    }
  }
  for (const auto& words : folder.opened.found.outstanding) {
    out << "\nNothing handed in: " << words;
  }
  const auto to_review = std::count_if(folder.marked.begin(), folder.marked.end(),
                                       [](const auto& one) { return one.returned.to_be_reviewed(); });
  out << fmt::format("\n{} sittings, {} to be reviewed, {} files that could not be opened\n",
                     folder.marked.size(), to_review, folder.opened.found.unreadable.size());
}

/// Puts every sitting that belongs to a case of the pack into the class's records, its checks beside it.
int keep(const MarkedFolder& folder, const OpenResults& asked, std::ostream& err) {
  const std::string& last_day = folder.opened.pack.head.delete_after;
  std::vector<records::Incoming> incoming;
  for (const auto& one : folder.marked) {
    if (auto in = classroom::incoming_of(one.returned, asked.label, last_day)) {
      incoming.push_back(std::move(*in));
    }
  }
  try {
    records::Store store(asked.store);
    auto room = open_marking_room();
    const records::ImportWishes wishes{asked.label, last_day, 2, now_s()};
    const auto sum = records::import_all(store, *room.marker, incoming, wishes, progress_on(err));
    print_refused(sum.refused, err);
    err << fmt::format("{}: {} new, {} known already, {} not taken\n", asked.store, sum.fresh, sum.known,
                       sum.refused.size());
    return sum.refused.empty() ? exit_good : exit_bad_input;
  } catch (const records::Trouble& trouble) {
    err << trouble.what() << '\n';
    return exit_bad_input;
  }
}

} // namespace

int run_open_results(const OpenResults& asked, std::ostream& out, std::ostream& err) {
  const auto folder = mark_folder(asked, asked.store.empty(), err);
  if (!folder) {
    return tell(folder.error(), err);
  }
  if (asked.json) {
    print_json(*folder, out);
  } else {
    print_text(*folder, !asked.store.empty(), out);
  }
  const int kept = asked.store.empty() ? exit_good : keep(*folder, asked, err);
  return folder->opened.found.unreadable.empty() ? kept : tell(folder->opened.found.unreadable, err);
}

} // namespace matula::command
