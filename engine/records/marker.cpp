#include "engine/records/marker.hpp"

#include "engine/records/sizes.hpp"
#include "engine/records/squeeze.hpp"
#include "engine/records/trouble.hpp"
#include "engine/strict/file.hpp"
#include "engine/strict/same.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace matula::records {

namespace fs = std::filesystem;

namespace {

/// A name for all files of these folders, by their content.
std::string name_of_files(const fs::path& root, const std::vector<std::string>& folders) {
  std::vector<fs::path> files;
  for (const std::string& folder : folders) {
    for (const auto& entry : fs::recursive_directory_iterator(root / folder)) {
      if (entry.is_regular_file()) {
        files.push_back(entry.path());
      }
    }
  }
  std::sort(files.begin(), files.end());
  std::string all;
  for (const fs::path& file : files) {
    std::string text;
    if (!strict::read_text(file, text)) {
      throw Trouble(file.string() + " cannot be read.");
    }
    all += fs::relative(file, root).generic_string() + ' ' + content_name(text) + '\n';
  }
  return content_name(all);
}

constexpr std::size_t most_ready = 64; // An examination has a variant a student: they are not kept for ever.
constexpr std::size_t most_bases = 8;

tl::unexpected<std::string> refuse(std::string words) {
  return tl::make_unexpected(std::move(words));
}

bool ends_with_finish(const sitting::Log& log) {
  return !log.events.empty() && std::holds_alternative<sitting::Finish>(log.events.back().what);
}

} // namespace

/// A scenario made ready for any number of sittings, or what is wrong with it.
struct Marker::Ready {
  std::string name; ///< content_name of its text.
  std::string wrong;
  scoring::Prepared prepared;
};

/// Made by the first who wants it, while the others wait.
struct Marker::Slot {
  std::once_flag once;
  std::shared_ptr<const Ready> ready;
};

/// A scenario with the tubes done by the book at it.
struct Marker::Base {
  std::string title;
  std::string text;
  scoring::BookWork work;
};

Marker::Marker(const assets::World& world, scoring::Standards standards, const fs::path& assets_folder)
    : world_(world),
      standards_(std::move(standards)), rubric_{name_of_files(assets_folder, {"procedures", "scoring"}),
                                                name_of_files(assets_folder,
                                                              {"ageing", "chemistry", "liquid", "optics",
                                                               "procedures", "reading", "reception"}),
                                                MATULA_VERSION} {}

scoring::Prepared Marker::prepare(const scenario::Scenario& scenario, const std::string& text) {
  static const std::vector<std::string> of_chance{"seed"};
  std::deque<std::shared_ptr<const Base>> bases;
  {
    const std::lock_guard<std::mutex> guard(busy_);
    bases = bases_;
  }
  for (const auto& base : bases) {
    if (base->title != scenario.title || !strict::first_difference(base->text, text, of_chance).empty()) {
      continue;
    }
    if (auto variant = scoring::prepare_from(base->work, world_, standards_, scenario)) {
      return std::move(*variant);
    }
  }
  auto base = std::make_shared<Base>(Base{scenario.title, text, {}});
  scoring::Prepared prepared = scoring::prepare(world_, standards_, scenario, &base->work);
  const std::lock_guard<std::mutex> guard(busy_);
  bases_.push_back(std::move(base));
  if (bases_.size() > most_bases) {
    bases_.pop_front();
  }
  return prepared;
}

std::shared_ptr<const Marker::Ready> Marker::ready(const std::string& text, const std::string& file) {
  const std::string name = content_name(text);
  std::shared_ptr<Slot> slot;
  {
    const std::lock_guard<std::mutex> guard(busy_);
    auto& there = ready_[name];
    if (!there) {
      there = std::make_shared<Slot>();
      ready_order_.push_back(name);
    }
    slot = there;
    if (ready_order_.size() > most_ready) { // Whoever works on it holds it; it would be made anew.
      ready_.erase(ready_order_.front());
      ready_order_.pop_front();
    }
  }
  std::call_once(slot->once, [&] {
    auto made = std::make_shared<Ready>();
    made->name = name;
    const auto scenario = scenario::parse(text, file, world_.catalogue);
    if (scenario) {
      made->prepared = prepare(*scenario, text);
    } else {
      made->wrong = scenario::to_text(scenario.error());
    }
    slot->ready = std::move(made);
  });
  return slot->ready;
}

tl::expected<Marked, std::string> Marker::finish(const Incoming& incoming, const Ready& under,
                                                 const sitting::Log& log) {
  Marked marked;
  marked.incoming = incoming;
  marked.scenario_name = under.name;
  marked.scenario_title = under.prepared.scenario.title;
  marked.log_name = content_name(incoming.log_text);
  marked.begun_with = log.header.program;
  marked.handed_in = ends_with_finish(log);
  marked.cut_off = !log.cut_off.empty();
  marked.rubric = rubric_;
  marked.report = scoring::score(world_, standards_, under.prepared, log.events);
  return marked;
}

tl::expected<Marked, std::string> Marker::mark(const Incoming& incoming) {
  if (std::string words = refuse_pseudonym(incoming.pseudonym); !words.empty()) {
    return refuse(std::move(words));
  }
  if (incoming.log_text.size() > most_log_bytes || incoming.scenario_text.size() > most_scenario_bytes) {
    return refuse(fmt::format("larger than any sitting could be ({} bytes; at most {})",
                              incoming.log_text.size(), most_log_bytes));
  }
  const auto log = sitting::parse_log(incoming.log_text, incoming.came_from);
  if (!log) {
    return refuse(scenario::to_text(log.error()));
  }
  const auto under = ready(incoming.scenario_text, incoming.scenario_file);
  if (!under->wrong.empty()) {
    return refuse("its scenario cannot be read: " + under->wrong);
  }
  const auto differs = sitting::check_scenario(log->header, under->prepared.scenario, incoming.came_from);
  if (!differs.empty()) {
    return refuse(scenario::to_text(differs));
  }
  return finish(incoming, *under, *log);
}

tl::expected<Marked, std::string> Marker::mark_under(const Incoming& incoming, const std::string& other) {
  const auto log = sitting::parse_log(incoming.log_text, incoming.came_from);
  if (!log) {
    return refuse(scenario::to_text(log.error()));
  }
  // What changes marks and nothing on the bench.
  static const std::vector<std::string> of_marks{"title",      "level",    "story",
                                                 "debrief",    "marking",  "weights",
                                                 "tolerances", "decision", "laboratory_rules"};
  if (const std::string key = strict::first_difference(incoming.scenario_text, other, of_marks);
      !key.empty()) {
    return refuse(
        "the other scenario is not the same bench: they differ in '" + key +
        "'. A sitting can be marked anew only by other weights, tolerances, [marking], decisions and words.");
  }
  const auto under = ready(other, incoming.scenario_file);
  if (!under->wrong.empty()) {
    return refuse("the other scenario cannot be read: " + under->wrong);
  }
  return finish(incoming, *under, *log);
}

std::string refuse_pseudonym(const std::string& pseudonym) {
  constexpr std::size_t longest = 64;
  const bool shaped =
      !pseudonym.empty() && pseudonym.size() <= longest && pseudonym[0] != '.' &&
      pseudonym.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_.") ==
          std::string::npos;
  return shaped ? ""
                : fmt::format(
                      "\"{}\" is no pseudonym: 1 to {} letters without accents, digits, '-', '_' and '.'",
                      pseudonym.substr(0, longest), longest);
}

} // namespace matula::records
