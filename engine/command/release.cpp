#include "engine/examination/release.hpp"

#include "engine/attribution/explanation_json.hpp"
#include "engine/command/exam_files.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/command/report.hpp"
#include "engine/command/returned_marks.hpp"
#include "engine/command/verbs.hpp"
#include "engine/desk/wall_clock.hpp"
#include "engine/examination/halves.hpp"
#include "engine/seal/frame.hpp"
#include "engine/sitting/log.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <ostream>

namespace matula::command {
namespace {

examination::Release release_of(const MarkedReturn& one, const examination::Pack& pack) {
  examination::Release release;
  release.pack = pack.head.id;
  release.pseudonym = one.returned.pseudonym;
  release.label = one.returned.label;
  release.case_key = one.returned.case_key;
  release.closing_code = one.returned.closing_code;
  release.marks = attribution::marks_text(*one.report, one.why, one.returned.case_key, false);
  release.checks = check_words(one.returned);
  release.scenario = one.returned.scenario_text;
  release.at_s = desk::now_s();
  return release;
}

/// Two sittings of one learner at one case are told apart by their closing codes.
std::filesystem::path file_of(const MarkedReturn& one, const std::string& folder) {
  return std::filesystem::path(folder) /
         fmt::format("{}-{}-{}.sheet", one.returned.pseudonym, one.returned.label, one.returned.closing_code);
}

/// Marks worked out anew from the learner's own log with the released scenario.
seal::Maybe<MarkedReturn> replay(const examination::Release& release, const std::string& log_file) {
  const auto ground = load_ground();
  auto bytes = seal::read_bytes(log_file, "your sitting's log");
  if (!ground || !bytes) {
    return tl::make_unexpected(ground ? bytes.error() : ground.error());
  }
  const auto log = sitting::parse_log(seal::text_of(*bytes), log_file);
  if (!log) {
    return tl::make_unexpected(log.error());
  }
  if (log->header.scenario_hash != examination::bench_hash(release.scenario)) {
    return seal::refuse(log_file, "the log of another case than the sheet's",
                        "the log of " + release.label + " in this examination");
  }
  examination::Returned own;
  own.file = log_file;
  own.case_key = release.case_key;
  own.scenario_text = release.scenario;
  own.log = seal::text_of(*bytes);
  return mark(*ground, std::move(own));
}

/// The marks of a sheet in words, as they stand in it.
void print_sheet(const std::string& marks, std::ostream& out) {
  const auto sheet = nlohmann::json::parse(marks, nullptr, false);
  if (!sheet.is_object() || !sheet.contains("marks") || !sheet["marks"].is_array()) {
    out << marks << '\n';
    return;
  }
  for (const auto& mark : sheet["marks"]) {
    out << fmt::format("{:>5} of {:<3} {}, {}\n", mark.value("earned", 0), mark.value("possible", 0),
                       mark.value("ledger", ""), mark.value("label", ""));
    if (const std::string reason = mark.value("reason", ""); !reason.empty()) {
      out << "             " << reason << '\n';
    }
  }
  const auto standing = sheet.value("standing", nlohmann::json::object());
  out << (standing.value("passed", false) ? "passed\n" : "not passed\n");
  out << "With --log and your sitting's log: what made each tube come out as it did.\n";
}

} // namespace

int run_release(const ReleaseResults& asked, std::ostream& out, std::ostream& err) {
  const auto folder = mark_folder(asked, true, err);
  if (!folder) {
    return tell(folder.error(), err);
  }
  std::error_code ignored; // A folder that cannot be made is told of when a sheet is written.
  std::filesystem::create_directories(asked.output, ignored);
  scenario::Problems problems = folder->opened.found.unreadable;
  auto files = nlohmann::ordered_json::array();
  for (const auto& one : folder->marked) {
    const auto card = folder->opened.cards.find(one.returned.pseudonym);
    if (!one.report || card == folder->opened.cards.end()) {
      problems.push_back({one.returned.file, 0, 0, "",
                          "a sitting that has no marks or whose learner has no card",
                          "a card of '" + one.returned.pseudonym + "' and a case of the pack"});
      continue;
    }
    const auto file = file_of(one, asked.output);
    const auto sealed = examination::seal_release(release_of(one, folder->opened.pack), folder->opened.keys,
                                                  card->second, file.string());
    const auto failed = sealed ? seal::write_bytes(file, *sealed) : sealed.error();
    problems.insert(problems.end(), failed.begin(), failed.end());
    if (failed.empty()) {
      files.push_back(file.string());
    }
  }
  if (asked.json) {
    out << nlohmann::ordered_json{{"sheets", files}}.dump(2) << '\n';
  } else {
    for (const auto& file : files) {
      out << file.get<std::string>() << '\n';
    }
  }
  return problems.empty() ? exit_good : tell(problems, err);
}

int run_feedback(const Feedback& asked, std::ostream& out, std::ostream& err) {
  const auto device = seal::load_device(asked.device);
  const auto bytes = seal::read_bytes(asked.sheet, "a released score sheet");
  if (!device || !bytes) {
    return tell(device ? bytes.error() : device.error(), err);
  }
  const auto release = examination::open_release(*bytes, *device, asked.sheet);
  if (!release) {
    return tell(release.error(), err);
  }
  if (!asked.pack.empty()) {
    const auto pack = examination::load_pack(asked.pack);
    if (!pack || pack->head.signing != release->signer) {
      return tell(pack ? seal::problem(asked.sheet,
                                       "a sheet that somebody else than the pack's instructor signed",
                                       "the sheet as your instructor released it")
                       : pack.error(),
                  err);
    }
  }
  const auto replayed =
      asked.log.empty() ? seal::Maybe<MarkedReturn>(MarkedReturn{}) : replay(*release, asked.log);
  if (!replayed) {
    return tell(replayed.error(), err);
  }
  if (asked.json) {
    nlohmann::ordered_json facts{
        {"pseudonym", release->pseudonym}, {"label", release->label},
        {"case", release->case_key},       {"closing_code", release->closing_code},
        {"checks", release->checks},       {"marks", nlohmann::json::parse(release->marks, nullptr, false)}};
    if (replayed->report) {
      facts["replayed"] = to_json(*replayed->report);
    }
    out << facts.dump(2) << '\n';
    return exit_good;
  }
  out << fmt::format("{}, {} ({})\n{}", release->pseudonym, release->label, release->case_key,
                     release->checks);
  if (replayed->report) {
    print_report(*replayed->report, replayed->why, out);
  } else {
    print_sheet(release->marks, out);
  }
  return exit_good;
}

} // namespace matula::command
