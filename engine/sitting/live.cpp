#include "engine/sitting/live.hpp"

#include "engine/scenario/scenario.hpp"
#include "sim/bench/bench.hpp"

namespace matula::sitting {

tl::expected<Live, scenario::Problems> Live::begin(const assets::World& world,
                                                   const scenario::Scenario& scenario,
                                                   const std::filesystem::path& log_file) {
  auto writer = LogWriter::create(log_file, header_for(scenario));
  if (!writer) {
    return tl::make_unexpected(writer.error());
  }
  return Live(Session(world, scenario), std::move(*writer));
}

tl::expected<Live, scenario::Problems> Live::resume(const assets::World& world,
                                                    const scenario::Scenario& scenario,
                                                    const std::filesystem::path& log_file) {
  const auto log = read_log(log_file);
  if (!log) {
    return tl::make_unexpected(log.error());
  }
  if (auto problems = check_scenario(log->header, scenario, log_file.string()); !problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  auto writer = LogWriter::reopen(log_file, *log);
  if (!writer) {
    return tl::make_unexpected(writer.error());
  }
  Live live(Session(world, scenario), std::move(*writer));
  for (const Event& event : log->events) {
    live.session_.take(event);
  }
  live.written_s_ = last_time_s(log->events);
  live.lost_ = log->cut_off;
  return live;
}

void Live::run_to(double time_s) {
  session_.run_to(time_s);
  if (!session_.finished() && session_.time_s() >= written_s_ + tick_s) {
    written_s_ = session_.time_s();
    // A lost tick costs time only; the next event reports a disk that refuses.
    (void)writer_.append({written_s_, bench::Action(bench::Wait{0})});
  }
}

bench::Outcome Live::take(const decltype(Event::what)& what) {
  const Event event{session_.time_s(), what};
  if (!session_.finished()) {
    if (!writer_.append(event)) {
      bench::Outcome outcome;
      outcome.done = false;
      outcome.refused_because = "The sitting could not be written down (" + writer_.why() + ").";
      return outcome;
    }
    written_s_ = event.time_s;
  }
  return session_.take(event);
}

} // namespace matula::sitting
