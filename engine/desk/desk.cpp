#include "engine/desk/desk.hpp"

#include "engine/assets/world.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/by_the_book.hpp"
#include "engine/scoring/standards.hpp"
#include "engine/sitting/log_writer.hpp"
#include "engine/sitting/session.hpp"
#include "sim/bench/bench.hpp"

#include <fmt/format.h>

#include <fstream>
#include <sstream>

namespace matula::desk {

namespace {

using scenario::Problems;
namespace fs = std::filesystem;

constexpr const char* program_version = "0.1.0";

std::string bytes_of(const fs::path& file) {
  std::ifstream stream(file, std::ios::binary);
  std::ostringstream text;
  text << stream.rdbuf();
  return text.str();
}

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

struct Desk::Impl {
  const Ground* ground = nullptr;
  scenario::Scenario scenario;
  scenario::Brief brief;
  sitting::Session session;
  sitting::LogWriter writer;
  std::vector<sitting::Event> events;
  std::optional<scoring::Report> report;

  [[nodiscard]] std::string write(const sitting::Event& event) {
    std::string problem = writer.append(event);
    if (problem.empty()) {
      events.push_back(event);
    }
    return problem;
  }

  void mark() { report = scoring::score(ground->world(), ground->standards(), scenario, events); }
};

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
  const sitting::Header header{scenario->key, sitting::digest(bytes_of(scenario_file)), program_version};
  auto writer = sitting::LogWriter::begin(free_name(sittings, scenario->key), header);
  if (!writer) {
    return tl::make_unexpected(writer.error());
  }
  sitting::Session session(ground.world(), *scenario);
  auto brief = scenario::brief_of(*scenario);
  return Desk(std::make_unique<Impl>(
      Impl{&ground, std::move(*scenario), std::move(brief), std::move(session), std::move(*writer), {}, {}}));
}

tl::expected<Desk, Problems> Desk::resume(const Ground& ground, const fs::path& sitting_file,
                                          const fs::path& scenarios) {
  auto log = sitting::read_log(sitting_file);
  if (!log) {
    return tl::make_unexpected(log.error());
  }
  const fs::path scenario_file = scenarios / (log->header.scenario + ".toml");
  auto scenario = scenario::load(scenario_file, ground.world().catalogue);
  if (!scenario) {
    return tl::make_unexpected(scenario.error());
  }
  if (sitting::digest(bytes_of(scenario_file)) != log->header.scenario_digest) {
    return tl::make_unexpected(
        Problems{{sitting_file.string(), 1, 0, "", "a sitting of another text of " + scenario_file.string(),
                  "the scenario file as it was when the sitting began"}});
  }
  auto writer = sitting::LogWriter::resume(sitting_file, *log);
  if (!writer) {
    return tl::make_unexpected(writer.error());
  }
  sitting::Session session(ground.world(), *scenario);
  for (const sitting::Event& event : log->events) {
    session.take(event);
  }
  auto brief = scenario::brief_of(*scenario);
  auto impl = std::make_unique<Impl>(Impl{&ground,
                                          std::move(*scenario),
                                          std::move(brief),
                                          std::move(session),
                                          std::move(*writer),
                                          std::move(log->events),
                                          {}});
  if (impl->session.finished()) {
    impl->mark();
  }
  return Desk(std::move(impl));
}

const scenario::Brief& Desk::brief() const {
  return impl_->brief;
}
const fs::path& Desk::log_file() const {
  return impl_->writer.file();
}

bench::Outcome Desk::act(const bench::Action& action) {
  const sitting::Event event{impl_->session.time_s(), action};
  const std::string problem = impl_->write(event);
  if (!problem.empty()) {
    bench::Outcome outcome;
    outcome.done = false;
    outcome.refused_because = problem;
    return outcome;
  }
  return impl_->session.take(event);
}

std::string Desk::record(const std::string& item, const std::string& value) {
  const sitting::Event event{impl_->session.time_s(), sitting::Record{item, value}};
  std::string problem = impl_->write(event);
  if (problem.empty()) {
    impl_->session.take(event);
  }
  return problem;
}

std::string Desk::finish() {
  const sitting::Event event{impl_->session.time_s(), sitting::Finish{}};
  std::string problem = impl_->write(event);
  if (problem.empty()) {
    impl_->session.take(event);
    impl_->mark();
  }
  return problem;
}

void Desk::run_to(double time_s) {
  impl_->session.run_to(time_s);
}

void Desk::note_time() {
  if (!impl_->session.finished()) {
    act(bench::Wait{0});
  }
}

double Desk::time_s() const {
  return impl_->session.time_s();
}
bool Desk::finished() const {
  return impl_->session.finished();
}
bench::Scene Desk::scene(const appearance::View& view) const {
  return impl_->session.scene(view);
}
const std::map<std::string, std::string>& Desk::worksheet() const {
  return impl_->session.worksheet();
}
const std::optional<scoring::Report>& Desk::report() const {
  return impl_->report;
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
    const auto book = scoring::do_by_the_book(impl_->session.setup(), recipe->second);
    tubes.push_back(bench::look(book.state, impl_->session.setup(), book.vessel, view));
  }
  return tubes;
}

} // namespace matula::desk
