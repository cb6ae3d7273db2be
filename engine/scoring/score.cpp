#include "engine/assets/world.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/by_the_book.hpp"
#include "engine/scoring/ledgers.hpp"
#include "engine/scoring/prepared.hpp"
#include "engine/scoring/roots.hpp"
#include "engine/scoring/standards.hpp"
#include "engine/sitting/setup.hpp"
#include "engine/sitting/steps.hpp"

#include <future>
#include <map>
#include <stdexcept>

namespace matula::scoring {
namespace {

std::string trimmed(const std::string& text) {
  const char* blanks = " \t\r\n";
  const auto first = text.find_first_not_of(blanks);
  return first == std::string::npos ? "" : text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

bool asks(const scenario::Asked& asked, const std::string& part) {
  return (part == "look" && asked.look) || (part == "gravity" && asked.specific_gravity) || asked.has(part);
}

/// A figure is judged by the instrument alone: there is no tube to lay beside it.
bool shows_a_tube(const Standards& standards, const scenario::Scenario& scenario, const std::string& test) {
  return standards.rules.find_test(test)->result == procedure::Result::Word && asks(scenario.asked, test);
}

/// What there is to read on a test done by the book; nothing when its recipe was stopped.
std::optional<reading::GradeReading> read_book(const assets::World& world, const Standards& standards,
                                               const bench::Setup& setup, const std::string& test,
                                               const BookTube& tube) {
  if (!tube.stopped_because.empty()) {
    return std::nullopt;
  }
  return read_vessel(tube.state, setup, world.thresholds, standards.rules.find_test(test)->scale,
                     tube.vessel);
}

/// The asked tests done by the book, each on a thread of its own: they share nothing but what nobody writes.
class BookTubes {
public:
  BookTubes(const assets::World& world, const scenario::Scenario& scenario, const Standards& standards)
      : world_(world), standards_(standards), setup_(sitting::make_setup(world, scenario)) {
    for (const auto& [key, recipe] : standards.recipes) {
      if (shows_a_tube(standards, scenario, key)) {
        running_[key] = std::async(std::launch::async,
                                   [this, &recipe = recipe] { return do_by_the_book(setup_, recipe); });
      }
    }
  }

  /// Waits for all; once only.
  BookReadings read() {
    BookReadings all;
    for (auto& [test, tube] : running_) {
      all[test] = read_book(world_, standards_, setup_, test, tube.get());
    }
    return all;
  }

private:
  const assets::World& world_;
  const Standards& standards_;
  bench::Setup setup_;
  std::map<std::string, std::future<BookTube>> running_;
};

std::vector<Compared> compare_tubes(const Case& marked, const Standards& standards,
                                    const BookReadings& books) {
  std::vector<Compared> all;
  for (const auto& test : standards.rules.tests) {
    const auto book = books.find(test.key);
    if (book == books.end()) {
      continue;
    }
    const auto& moment = marked.replay.tests.at(test.key);
    Compared pair;
    pair.tubes.test = test.key;
    pair.tubes.title = test.title;
    pair.tubes.learner_vessel = moment.vessel;
    pair.tubes.learner_read_at_s = moment.time_s;
    if (book->second) {
      pair.tubes.reference_word = test.word(book->second->grade);
      pair.book_intensity = book->second->intensity;
    }
    if (moment.tube) {
      pair.tubes.learner_tube_word = test.word(moment.tube->grade);
      pair.learner_intensity = moment.tube->intensity;
      pair.tubes.learner_intensity = moment.tube->intensity;
    }
    all.push_back(std::move(pair));
  }
  return all;
}

/// What the recipe's lines of a steps file say.
void read_acts(procedure::Recipe& recipe, const std::filesystem::path& file, scenario::Problems& problems) {
  for (auto& step : recipe.steps) {
    const auto events = sitting::parse_steps(step.act, file.string());
    if (!events) {
      problems.insert(problems.end(), events.error().begin(), events.error().end());
      continue;
    }
    for (const auto& event : *events) {
      if (const auto* action = std::get_if<bench::Action>(&event.what)) {
        step.acts.push_back(*action);
      }
    }
  }
}

void append(std::vector<Mark>& all, std::vector<Mark> more) {
  all.insert(all.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

/// The whole report, once the log has been played.
Report mark_all(const Case& marked, const std::vector<Compared>& compared) {
  Report report;
  append(report.marks, mark_reception(marked, report.safety_stop));
  append(report.marks, mark_looks(marked));
  append(report.marks, mark_gravity(marked));
  append(report.marks, mark_grades(marked));
  append(report.marks, mark_decisions(marked));
  const auto process = mark_process(marked);
  append(report.marks, note_specimen(marked, compared, process));
  append(report.marks, process);
  append(report.marks, mark_safety(marked, report.safety_stop));
  charge_roots(report.marks, marked, compared);
  report.losses = losses_by_root(report.marks);
  report.findings = findings_of(report.marks);
  report.standing = standing_of(report.marks, marked.book.pass, report.safety_stop);
  for (const auto& pair : compared) {
    report.tubes.push_back(pair.tubes);
  }
  report.debrief = marked.scenario.debrief;
  return report;
}

} // namespace

std::string Case::entry(const std::string& item) const {
  const auto found = replay.written.find(item);
  return found == replay.written.end() ? "" : trimmed(found->second.value);
}

bool Case::asks(const std::string& part) const {
  return scoring::asks(scenario.asked, part);
}

namespace {

Report score_played(const assets::World& world, const Standards& standards,
                    const scenario::Scenario& scenario, const std::vector<sitting::Event>& log,
                    sitting::Session& session, const Heard& heard, Idle idle) {
  BookTubes books(world, scenario, standards);
  const Rulebook rules = standards.rules.with(scenario.marking.rules);
  const auto replay = play_through(world, scenario, rules, log, session, heard, idle);
  const Case marked{world, scenario, rules, replay};
  return mark_all(marked, compare_tubes(marked, standards, books.read()));
}

} // namespace

Report score(const assets::World& world, const Standards& standards, const scenario::Scenario& scenario,
             const std::vector<sitting::Event>& log) {
  sitting::Session session(world, scenario);
  return score_played(world, standards, scenario, log, session, {}, Idle::Laid_aside);
}

Report score(const assets::World& world, const Standards& standards, const scenario::Scenario& scenario,
             const std::vector<sitting::Event>& log, sitting::Session& session, const Heard& heard) {
  return score_played(world, standards, scenario, log, session, heard, Idle::Live_on);
}

Prepared prepare(const assets::World& world, const Standards& standards, const scenario::Scenario& scenario,
                 BookWork* kept) {
  Prepared prepared{scenario, sitting::make_setup(world, scenario), {}, {}};
  prepared.fresh = bench::begin(prepared.setup);
  for (const auto& [key, recipe] : standards.recipes) {
    if (!shows_a_tube(standards, scenario, key)) {
      continue;
    }
    BookTube tube = do_by_the_book(prepared.setup, prepared.fresh, recipe);
    prepared.books[key] = read_book(world, standards, prepared.setup, key, tube);
    if (kept != nullptr) {
      kept->drew_chance = kept->drew_chance || tube.state.random_counter != prepared.fresh.random_counter;
      std::erase_if(tube.state.vessels, [&](const auto& entry) { return entry.first != tube.vessel; });
      kept->tubes[key] = std::move(tube);
    }
  }
  if (kept != nullptr) {
    kept->fresh = prepared.fresh;
  }
  return prepared;
}

std::optional<Prepared> prepare_from(const BookWork& work, const assets::World& world,
                                     const Standards& standards, const scenario::Scenario& scenario) {
  if (work.drew_chance) {
    return std::nullopt;
  }
  Prepared prepared{scenario, sitting::make_setup(world, scenario), work.fresh, {}};
  for (const auto& [key, tube] : work.tubes) {
    prepared.books[key] = read_book(world, standards, prepared.setup, key, tube);
  }
  return prepared;
}

Report score(const assets::World& world, const Standards& standards, const Prepared& prepared,
             const std::vector<sitting::Event>& log) {
  sitting::Session session(world, prepared.scenario, prepared.fresh);
  const Rulebook rules = standards.rules.with(prepared.scenario.marking.rules);
  const auto replay = play_through(world, prepared.scenario, rules, log, session, {}, Idle::Laid_aside);
  const Case marked{world, prepared.scenario, rules, replay};
  return mark_all(marked, compare_tubes(marked, standards, prepared.books));
}

Report score(const assets::World& world, const scenario::Scenario& scenario,
             const std::vector<sitting::Event>& log) {
  const auto standards = load_standards(assets::folder());
  if (!standards) {
    throw std::runtime_error(scenario::to_text(standards.error()));
  }
  return score(world, *standards, scenario, log);
}

tl::expected<Standards, scenario::Problems> load_standards(const std::filesystem::path& assets_folder) {
  Standards standards;
  scenario::Problems problems;
  auto rules = load_rulebook(assets_folder);
  if (!rules) {
    return tl::make_unexpected(rules.error());
  }
  standards.rules = std::move(*rules);
  for (auto& test : standards.rules.tests) {
    read_acts(test.recipe, assets_folder / "procedures" / (test.key + ".toml"), problems);
    standards.recipes[test.key] = test.recipe;
  }
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return standards;
}

} // namespace matula::scoring
