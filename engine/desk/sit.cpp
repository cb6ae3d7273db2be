#include "engine/assets/world.hpp"
#include "engine/desk/desk_impl.hpp"

#include "engine/strict/file.hpp"

namespace matula::desk {

namespace {

namespace fs = std::filesystem;
using scenario::Problems;

/// A log that was killed before its first line was whole holds nothing to go on with.
bool is_begun(const fs::path& log_file) {
  std::string text;
  return strict::read_text(log_file, text) && text.find('\n') != std::string::npos;
}

tl::expected<sitting::Live, Problems> live_at(const Ground& ground, const scenario::Scenario& scenario,
                                              const fs::path& log_file) {
  if (is_begun(log_file)) {
    return sitting::Live::resume(ground.world(), scenario, log_file);
  }
  std::error_code ignored; // What cannot be removed or made is reported by the writer, with its reason.
  fs::remove(log_file, ignored);
  fs::create_directories(log_file.parent_path(), ignored);
  return sitting::Live::begin(ground.world(), scenario, log_file);
}

} // namespace

tl::expected<Desk, Problems> Desk::sit(const Ground& ground, const examination::Seat& seat,
                                       const seal::Device& device, const fs::path& folder) {
  if (device.pseudonym != seat.pseudonym) {
    return seal::refuse(log_of(seat, folder).string(), "the device key of '" + device.pseudonym + "'",
                        "the device key of '" + seat.pseudonym + "'");
  }
  auto scenario = scenario::parse_bench_half(seat.bench, seat.label + ".toml", ground.world().catalogue);
  if (!scenario) {
    return tl::make_unexpected(scenario.error());
  }
  scenario->title = seat.head.title + ": " + seat.label;
  const fs::path log_file = log_of(seat, folder);
  auto live = live_at(ground, *scenario, log_file);
  if (!live) {
    return tl::make_unexpected(live.error());
  }
  auto exam = ExamRun::open(seat, device, log_file);
  if (!exam) {
    return tl::make_unexpected(exam.error());
  }
  auto brief = scenario::brief_of(*scenario);
  auto impl = std::make_unique<Impl>(
      Impl{&ground, std::move(*scenario), std::move(brief), std::move(*live), log_file});
  impl->exam = std::move(*exam);
  impl->live.watch([run = impl->exam.get()](const std::string& line) { run->take(line); });
  impl->go_on();
  if (impl->session().finished()) {
    if (std::string problem = impl->exam->close(); !problem.empty()) {
      return seal::refuse(log_file.string(), problem, "a folder with room on its disk");
    }
  }
  return Desk(std::move(impl));
}

bool Desk::examination() const {
  return impl_->exam != nullptr;
}

const std::optional<Closed>& Desk::closed() const {
  static const std::optional<Closed> none;
  return impl_->exam ? impl_->exam->closed() : none;
}

} // namespace matula::desk
