#include "engine/desk/desk_impl.hpp"

#include "engine/attribution/explanation_json.hpp"
#include "engine/desk/remember.hpp"
#include "engine/desk/wall_clock.hpp"
#include "engine/scoring/standards.hpp"

#include <fstream>

namespace matula::desk {

namespace fs = std::filesystem;

scenario::Problems Desk::Impl::find_guide(const fs::path& scenario_file) {
  const auto file = guide::guide_file(ground->assets_folder(), scenario_file);
  if (!fs::exists(file)) {
    return {};
  }
  auto loaded = guide::load(file);
  if (!loaded) {
    return loaded.error();
  }
  guide = std::move(*loaded);
  follower.emplace(*guide);
  return {};
}

void Desk::Impl::go_on() {
  // A replay in long stretches can end a rounding before the time last logged; a log whose times fall is
  // refused.
  constexpr double microsecond_s = 1e-6;
  live.run_to(session().time_s() + microsecond_s);
}

bench::Outcome Desk::Impl::take(const decltype(sitting::Event::what)& what) {
  const double now_s = session().time_s();
  bench::Outcome outcome = live.take(what);
  if (follower && outcome.done) {
    follower->see({now_s, what});
  }
  return outcome;
}

std::string Desk::Impl::mark() {
  auto log = sitting::read_log(log_file);
  if (!log) {
    return scenario::to_text(log.error());
  }
  events = std::move(log->events);
  report = scoring::score(ground->world(), ground->standards(), scenario, events);
  why = attribution::explain(ground->world(), ground->standards(), scenario, events, *report);
  return {};
}

std::string Desk::Impl::keep_marks(const fs::path& file) const {
  std::ofstream out(file);
  out << attribution::marks_text(*report, why, scenario.key, false);
  out.close();
  return out ? "" : "The marks could not be written to " + file.string() + ".";
}

std::string Desk::Impl::remember() const {
  const auto folder = learner_folder(log_file.parent_path());
  std::error_code ignored; // A folder that cannot be made is told of when the record is written.
  fs::create_directories(folder, ignored);
  const auto answers = answers_of(*report, ground->standards().rules, log_file.stem().string(), now_s());
  const auto problems = learner::append(record_file(folder), answers);
  return problems.empty() ? "" : "Marked, but not added to your record: " + scenario::to_text(problems);
}

} // namespace matula::desk
