#include "engine/command/exam_files.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/command/verbs.hpp"
#include "engine/desk/desk.hpp"
#include "engine/examination/seat.hpp"
#include "engine/seal/base32.hpp"
#include "engine/seal/passphrase.hpp"
#include "engine/sitting/log.hpp"
#include "engine/sitting/steps.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <ostream>

namespace matula::command {
namespace {

/// Ticks keep the time; everything else was a step.
bool is_step(const sitting::Event& event) {
  const auto* action = std::get_if<bench::Action>(&event.what);
  const auto* wait = action != nullptr ? std::get_if<bench::Wait>(action) : nullptr;
  return wait == nullptr || wait->seconds > 0;
}

std::size_t steps_done(const desk::Desk& desk) {
  const auto log = sitting::read_log(desk.log_file());
  return log ? static_cast<std::size_t>(std::count_if(log->events.begin(), log->events.end(), is_step)) : 0;
}

/// What was refused, in words; "" when it was done.
std::string take(desk::Desk& desk, const sitting::Event& step) {
  desk.run_to(step.time_s);
  if (const auto* action = std::get_if<bench::Action>(&step.what)) {
    return desk.act(*action).refused_because;
  }
  if (const auto* record = std::get_if<sitting::Record>(&step.what)) {
    return desk.record(record->item, record->value);
  }
  return desk.finish();
}

seal::Maybe<examination::Seat> seat_of(const examination::Pack& pack, const seal::Device& device,
                                       const Sit& asked) {
  auto words = ask_passphrase(asked.passphrase_file, "Class");
  if (!words) {
    return tl::make_unexpected(words.error());
  }
  const std::string why = seal::refuse_drawn(*words, seal::class_letters, "a class passphrase");
  if (!why.empty()) {
    return seal::refuse(asked.passphrase_file.empty() ? "passphrase" : asked.passphrase_file, why,
                        "the passphrase as it was read out in the room");
  }
  const auto bench = examination::open_bench(pack, seal::passphrase_bytes(*words));
  return bench ? examination::take_seat(pack, *bench, device.pseudonym, asked.label, asked.nonce)
               : tl::make_unexpected(bench.error());
}

void print(const desk::Desk& desk, const std::vector<std::string>& refused, bool json, std::ostream& out) {
  nlohmann::ordered_json facts{{"log", desk.log_file().string()},
                               {"handed_in", desk.finished()},
                               {"bench_time_s", desk.time_s()},
                               {"refused", refused}};
  if (desk.closed()) {
    facts["result"] = desk.closed()->result_file.string();
    facts["closing_code"] = desk.closed()->closing_code;
  }
  if (json) {
    out << facts.dump(2) << '\n';
    return;
  }
  for (const auto& words : refused) {
    out << "Refused: " << words << '\n';
  }
  if (desk.closed()) {
    out << "Handed in: " << desk.closed()->result_file.string()
        << "\nClosing code: " << desk.closed()->closing_code << "  (copy it into the register by hand)\n";
  } else {
    out << "Not handed in yet: " << desk.log_file().string() << '\n';
  }
}

} // namespace

int run_sit(const Sit& asked, std::ostream& out, std::ostream& err) {
  const auto pack = examination::load_pack(asked.pack);
  const auto device = seal::load_device(asked.device);
  const auto steps = sitting::read_steps(asked.steps);
  if (!pack || !device || !steps) {
    return tell(!pack ? pack.error() : !device ? device.error() : steps.error(), err);
  }
  const auto seat = seat_of(*pack, *device, asked);
  const auto ground = desk::Ground::load();
  if (!seat || !ground) {
    return tell(seat ? ground.error() : seat.error(), err);
  }
  auto desk = desk::Desk::sit(*ground, *seat, *device, asked.folder);
  if (!desk) {
    return tell(desk.error(), err);
  }
  std::size_t done = steps_done(*desk);
  std::vector<std::string> refused;
  for (const auto& step : *steps) {
    if (done > 0 && is_step(step)) {
      --done;
    } else if (std::string words = take(*desk, step); !words.empty()) {
      refused.push_back(std::move(words));
    }
  }
  print(*desk, refused, asked.json, out);
  return exit_good;
}

} // namespace matula::command
