#include "engine/command/returned_marks.hpp"

#include "engine/command/exam_files.hpp"
#include "engine/sitting/log.hpp"

#include <fmt/format.h>

#include <ostream>
#include <unistd.h>

namespace matula::command {
namespace {

constexpr const char* no_such_case = "the pack has no such case for this learner";

/// One line that is written over; nothing where nobody watches.
class Watched {
public:
  explicit Watched(std::ostream& err) : err_(err), watched_(::isatty(STDERR_FILENO) == 1) {}
  void tell(const char* what, std::size_t done, std::size_t of) {
    if (watched_) {
      err_ << fmt::format("\r{} {} of {} ", what, done, of) << (done == of ? "\n" : "") << std::flush;
    }
  }

private:
  std::ostream& err_;
  bool watched_;
};

} // namespace

MarkedReturn mark(const Ground& ground, examination::Returned returned) {
  MarkedReturn marked;
  const auto scenario =
      scenario::parse(returned.scenario_text, returned.case_key + ".toml", ground.world->catalogue);
  const auto log = sitting::parse_log(returned.log, returned.file);
  if (returned.scenario_text.empty() || !scenario || !log) {
    marked.not_marked_because = returned.scenario_text.empty() ? no_such_case
                                : !scenario                    ? scenario::to_text(scenario.error())
                                                               : scenario::to_text(log.error());
  } else {
    marked.report = scoring::score(*ground.world, ground.standards, *scenario, log->events);
    marked.why =
        attribution::explain(*ground.world, ground.standards, *scenario, log->events, *marked.report);
  }
  marked.returned = std::move(returned);
  return marked;
}

std::string check_words(const examination::Returned& returned) {
  std::string all;
  for (const auto& words : examination::words_of(returned.checks)) {
    all += words + '\n';
  }
  return all;
}

seal::Maybe<MarkedFolder> mark_folder(const Results& asked, bool marks, std::ostream& err) {
  const auto ground = load_ground();
  if (!ground) {
    return tl::make_unexpected(ground.error());
  }
  Watched progress(err);
  auto opened = examination::open_returned(
      {asked.folder, asked.pack, asked.keys, asked.cards, asked.codes}, ask_for_own(asked.passphrase_file),
      [&](std::size_t done, std::size_t of) { progress.tell("opened", done, of); });
  if (!opened) {
    return tl::make_unexpected(opened.error());
  }
  MarkedFolder folder{std::move(*opened), {}};
  auto& sittings = folder.opened.found.sittings;
  for (auto& one : sittings) {
    if (!marks) {
      const char* why = one.scenario_text.empty() ? no_such_case : "marked in the records";
      folder.marked.push_back({std::move(one), std::nullopt, {}, why});
      continue;
    }
    folder.marked.push_back(mark(*ground, std::move(one)));
    progress.tell("marked", folder.marked.size(), sittings.size());
  }
  sittings.clear();
  return folder;
}

} // namespace matula::command
