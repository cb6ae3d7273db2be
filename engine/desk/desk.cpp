#include "engine/desk/desk_impl.hpp"

#include "engine/assets/world.hpp"
#include "engine/scoring/by_the_book.hpp"
#include "engine/scoring/standards.hpp"
#include "engine/sitting/items.hpp"
#include "sim/bench/bench.hpp"
#include "sim/bench/seen.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::desk {

namespace {

using scenario::Problems;
namespace fs = std::filesystem;

/// The first free name: case-1.jsonl, case-2.jsonl ...
fs::path free_name(const fs::path& folder, const std::string& key) {
  fs::path file;
  int number = 1;
  do {
    file = folder / fmt::format("{}-{}.jsonl", key, number++);
  } while (fs::exists(file));
  return file;
}

} // namespace

Desk::Desk(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
Desk::~Desk() = default;
Desk::Desk(Desk&&) noexcept = default;
Desk& Desk::operator=(Desk&&) noexcept = default;

tl::expected<Desk, Problems> Desk::begin(const Ground& ground, const fs::path& scenario_file,
                                         const fs::path& sittings) {
  auto scenario = scenario::load(scenario_file, ground.world().catalogue);
  if (!scenario) {
    return tl::make_unexpected(scenario.error());
  }
  std::error_code ignored; // A folder that cannot be made is reported by the writer, with its reason.
  fs::create_directories(sittings, ignored);
  fs::path log_file = free_name(sittings, scenario->key);
  auto live = sitting::Live::begin(ground.world(), *scenario, log_file);
  if (!live) {
    return tl::make_unexpected(live.error());
  }
  auto brief = scenario::brief_of(*scenario);
  auto impl = std::make_unique<Impl>(Impl{&ground, std::move(*scenario), std::move(brief), std::move(*live),
                                          std::move(log_file), scenario_file.parent_path()});
  if (auto problems = impl->find_guide(scenario_file); !problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return Desk(std::move(impl));
}

tl::expected<Desk, Problems> Desk::resume(const Ground& ground, const fs::path& sitting_file,
                                          const fs::path& scenarios) {
  auto log = sitting::read_log(sitting_file);
  if (!log) {
    return tl::make_unexpected(log.error());
  }
  auto scenario = scenario::load(scenarios / (log->header.scenario_key + ".toml"), ground.world().catalogue);
  if (!scenario) {
    return tl::make_unexpected(scenario.error());
  }
  auto live = sitting::Live::resume(ground.world(), *scenario, sitting_file);
  if (!live) {
    return tl::make_unexpected(live.error());
  }
  auto brief = scenario::brief_of(*scenario);
  auto impl = std::make_unique<Impl>(
      Impl{&ground, std::move(*scenario), std::move(brief), std::move(*live), sitting_file, scenarios});
  if (auto problems = impl->find_guide(scenarios / (log->header.scenario_key + ".toml")); !problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  for (const sitting::Event& event : log->events) {
    if (impl->follower) {
      impl->follower->see(event);
    }
  }
  impl->go_on();
  if (impl->session().finished()) {
    (void)impl->mark(); // The log was read a moment ago.
  }
  return Desk(std::move(impl));
}

const scenario::Brief& Desk::brief() const {
  return impl_->brief;
}
const fs::path& Desk::log_file() const {
  return impl_->log_file;
}

fs::path Desk::marks_file() const {
  return impl_->log_file.string() + ".marks.json";
}

bench::Outcome Desk::act(const bench::Action& action) {
  return impl_->take(action);
}

std::string Desk::record(const std::string& item, const std::string& value) {
  const sitting::Record record{item, value};
  std::string problem = sitting::refuse_record(impl_->scenario, record);
  return problem.empty() ? impl_->take(record).refused_because : problem;
}

std::string Desk::finish() {
  std::string problem = impl_->live.take(sitting::Finish{}).refused_because;
  if (impl_->exam) {
    return problem.empty() ? impl_->exam->close() : problem;
  }
  if (problem.empty()) {
    problem = impl_->mark();
  }
  if (problem.empty()) {
    problem = impl_->keep_marks(marks_file());
  }
  return problem.empty() ? impl_->remember() : problem;
}

std::optional<GuideNow> Desk::guide() const {
  if (!impl_->follower) {
    return std::nullopt;
  }
  const guide::Follower& follower = *impl_->follower;
  GuideNow now;
  now.steps = follower.steps();
  now.steps_done = follower.steps_done();
  now.remark = guide::say(follower, follower.remark());
  now.welcome = now.steps_done == 0 ? impl_->guide->welcome : "";
  if (follower.finished()) {
    now.goal = impl_->guide->farewell;
    return now;
  }
  const guide::Place at = follower.now();
  const guide::Part& part = impl_->guide->parts[at.part];
  const guide::Step& step = part.steps[at.step];
  now.part = part.title;
  now.goal = part.goal;
  now.help = part.help;
  now.say = guide::say(follower, step.say);
  now.why = step.why;
  now.show = step.show;
  return now;
}

void Desk::run_to(double time_s) {
  impl_->live.run_to(time_s);
}

void Desk::note_time() {
  if (!finished()) {
    act(bench::Wait{0});
  }
}

double Desk::time_s() const {
  return impl_->session().time_s();
}
bool Desk::finished() const {
  return impl_->session().finished();
}
bool Desk::wears_gloves() const {
  return impl_->session().state().gloves;
}
bool Desk::wears_goggles() const {
  return impl_->session().state().goggles;
}
bench::Scene Desk::scene(const appearance::View& view) const {
  return impl_->session().scene(view);
}
const std::map<std::string, std::string>& Desk::worksheet() const {
  return impl_->session().worksheet();
}
const std::optional<scoring::Report>& Desk::report() const {
  return impl_->report;
}

const std::vector<attribution::Explanation>& Desk::why() const {
  return impl_->why;
}

std::vector<appearance::Appearance> Desk::tubes_of(const scoring::ByTheBook& test,
                                                   const appearance::View& view) const {
  std::vector<appearance::Appearance> tubes;
  if (!test.learner_vessel.empty()) {
    sitting::Session replay(impl_->ground->world(), impl_->scenario);
    for (const sitting::Event& event : impl_->events) {
      if (event.time_s > test.learner_read_at_s) {
        break;
      }
      replay.take(event);
    }
    tubes.push_back(replay.look(test.learner_vessel, view));
  }
  const auto recipe = impl_->ground->standards().recipes.find(test.test);
  if (recipe != impl_->ground->standards().recipes.end()) {
    const auto book = scoring::do_by_the_book(impl_->session().setup(), recipe->second);
    tubes.push_back(bench::look(book.state, impl_->session().setup(), book.vessel, view));
  }
  return tubes;
}

bench::Scene Desk::seen_when_read(const scoring::ByTheBook& test) const {
  sitting::Session replay(impl_->ground->world(), impl_->scenario);
  for (const sitting::Event& event : impl_->events) {
    if (event.time_s > test.learner_read_at_s) {
      break;
    }
    replay.take(event);
  }
  replay.run_to(test.learner_read_at_s);
  return bench::make_scene(replay.state(), replay.setup(), {});
}

std::vector<EarlierTube> Desk::earlier_tubes(const scoring::ByTheBook& test, const appearance::View& view,
                                             std::size_t most) const {
  auto tubes = desk::earlier_tubes(*impl_->ground, impl_->scenarios, impl_->log_file.parent_path(),
                                   impl_->log_file, test.test, view, most);
  const auto* rule = impl_->ground->standards().rules.find_test(test.test);
  const auto own = tubes_of(test, view);
  if (test.learner_vessel.empty() || own.empty() || rule == nullptr) {
    return tubes;
  }
  EarlierTube mine{"this one", "", test.learner_tube_word, 0, own.front()};
  for (const auto& mark : impl_->report->marks) {
    mine.written = mark.item == rule->item() ? mark.entered : mine.written;
  }
  mine.intensity = test.learner_intensity;
  const auto place = std::upper_bound(tubes.begin(), tubes.end(), mine.intensity,
                                      [](double x, const EarlierTube& tube) { return x < tube.intensity; });
  tubes.insert(place, std::move(mine));
  return tubes;
}

std::optional<PadPair> Desk::pads_of(const scoring::ByTheBook& test) const {
  const auto& standards = impl_->ground->standards();
  const auto* rule = standards.rules.find_test(test.test);
  if (rule == nullptr || !rule->scale.on_paper()) {
    return std::nullopt;
  }
  const reading::PaperScale& where = rule->scale.paper;
  PadPair pair;
  if (!test.learner_vessel.empty()) {
    pair.learner = bench::pad_in(seen_when_read(test), test.learner_vessel, where.pad);
  }
  const bench::Setup& setup = impl_->session().setup();
  const auto book = scoring::do_by_the_book(setup, standards.recipes.at(test.test));
  const bench::Scene scene = bench::make_scene(book.state, setup, {});
  pair.book = bench::pad_in(scene, book.vessel, where.pad);
  pair.row = bench::card_row_in(scene, where.paper, where.pad);
  return pair;
}

tl::expected<scenario::Brief, Problems> read_brief(const Ground& ground, const fs::path& scenario_file) {
  return scenario::load(scenario_file, ground.world().catalogue).map(scenario::brief_of);
}

KeptSitting look_into(const fs::path& sitting_file) {
  const auto log = sitting::read_log(sitting_file);
  if (!log) {
    return {};
  }
  return {log->header.scenario_key,
          !log->events.empty() && std::holds_alternative<sitting::Finish>(log->events.back().what)};
}

} // namespace matula::desk
