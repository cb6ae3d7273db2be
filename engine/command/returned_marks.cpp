#include "engine/command/returned_marks.hpp"

#include "engine/command/exam_files.hpp"
#include "engine/sitting/log.hpp"
#include "engine/strict/file.hpp"

#include <fmt/format.h>

#include <ostream>
#include <unistd.h>

namespace matula::command {
namespace {

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

seal::Maybe<examination::Register> held_against(const Results& asked) {
  examination::Register held;
  if (!asked.cards.empty()) {
    auto cards = seal::read_cards(asked.cards);
    if (!cards) {
      return tl::make_unexpected(cards.error());
    }
    held.devices = std::move(*cards);
  }
  if (!asked.codes.empty()) {
    auto codes = examination::read_codes(asked.codes);
    if (!codes) {
      return tl::make_unexpected(codes.error());
    }
    held.codes = std::move(*codes);
  }
  return held;
}

bool rules_differ(const std::string& sealed_with) {
  std::string now;
  return strict::read_text(assets::folder() / "scoring" / "rules.toml", now) && now != sealed_with;
}

} // namespace

MarkedReturn mark(const Ground& ground, examination::Returned returned) {
  MarkedReturn marked;
  const auto scenario =
      scenario::parse(returned.scenario_text, returned.case_key + ".toml", ground.world->catalogue);
  const auto log = sitting::parse_log(returned.log, returned.file);
  if (returned.scenario_text.empty() || !scenario || !log) {
    marked.not_marked_because = returned.scenario_text.empty() ? "the pack has no such case for this learner"
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
  using State = examination::Check::State;
  std::string words;
  for (const examination::Check& one : returned.checks) {
    if (one.state != State::Good || one.what == "copies") {
      const char* state = one.state == State::ToBeReviewed ? "to be reviewed"
                          : one.state == State::NotChecked ? "not checked"
                                                           : "noted";
      words += fmt::format("{}: {}: {}\n", state, one.what, one.words);
    }
  }
  return words;
}

seal::Maybe<MarkedFolder> mark_folder(const Results& asked, bool marks, std::ostream& err) {
  auto pack = examination::load_pack(asked.pack);
  auto held = held_against(asked);
  if (!pack || !held) {
    return tl::make_unexpected(pack ? held.error() : pack.error());
  }
  auto keys = unlock(asked.keys, asked.passphrase_file);
  if (!keys) {
    return tl::make_unexpected(keys.error());
  }
  const auto key = examination::open_key(*pack, *keys);
  const auto ground = load_ground();
  if (!key || !ground) {
    return tl::make_unexpected(key ? ground.error() : key.error());
  }
  Watched progress(err);
  auto found =
      examination::open_folder(asked.folder, *pack, *key, *keys, *held,
                               [&](std::size_t done, std::size_t of) { progress.tell("opened", done, of); });
  if (!found) {
    return tl::make_unexpected(found.error());
  }
  MarkedFolder folder{std::move(*keys),         std::move(*pack),  std::move(held->devices),
                      rules_differ(key->rules), std::move(*found), {}};
  for (auto& one : folder.found.sittings) {
    if (!marks) {
      folder.marked.push_back({std::move(one), std::nullopt, {}, "marked in the records"});
      continue;
    }
    folder.marked.push_back(mark(*ground, std::move(one)));
    progress.tell("marked", folder.marked.size(), folder.found.sittings.size());
  }
  folder.found.sittings.clear();
  return folder;
}

} // namespace matula::command
