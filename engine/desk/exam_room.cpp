#include "engine/desk/exam_room.hpp"

#include "engine/desk/exam_run.hpp"
#include "engine/examination/seat.hpp"
#include "engine/seal/device.hpp"
#include "engine/seal/passphrase.hpp"
#include "engine/strict/disk.hpp"
#include "engine/strict/file.hpp"

#include <algorithm>

namespace matula::desk {

namespace fs = std::filesystem;

struct ExamRoom::Impl {
  examination::Pack pack;
  examination::BenchSection bench;
  seal::Device device;
  std::string session_code;
  fs::path folder;
  std::vector<std::string> labels;

  [[nodiscard]] seal::Maybe<examination::Seat> seat(const std::string& label) const {
    return examination::take_seat(pack, bench, device.pseudonym, label, session_code);
  }
};

std::vector<PackOnOffer> packs_in(const fs::path& folder) {
  std::vector<PackOnOffer> all;
  for (const fs::path& file : strict::files_in(folder, ".pack")) {
    PackOnOffer one;
    one.file = file;
    if (const auto pack = examination::load_pack(file)) {
      one.title = pack->head.title;
      one.minutes = pack->head.minutes;
      one.fingerprint = examination::fingerprint(*pack);
    } else {
      one.problem = scenario::to_text(pack.error());
    }
    all.push_back(std::move(one));
  }
  return all;
}

std::vector<DeviceOnOffer> devices_in(const fs::path& folder) {
  std::vector<DeviceOnOffer> all;
  for (const fs::path& file : strict::files_in(folder, ".device")) {
    DeviceOnOffer one;
    one.file = file;
    if (const auto device = seal::load_device(file)) {
      one.pseudonym = device->pseudonym;
    } else {
      one.problem = scenario::to_text(device.error());
    }
    all.push_back(std::move(one));
  }
  return all;
}

ExamRoom::ExamRoom(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
ExamRoom::~ExamRoom() = default;
ExamRoom::ExamRoom(ExamRoom&&) noexcept = default;
ExamRoom& ExamRoom::operator=(ExamRoom&&) noexcept = default;

tl::expected<ExamRoom, scenario::Problems>
ExamRoom::open(const fs::path& pack_file, const fs::path& device_file, const std::string& class_passphrase,
               const std::string& session_code, const fs::path& folder) {
  auto pack = examination::load_pack(pack_file);
  auto device = seal::load_device(device_file);
  if (!pack || !device) {
    return tl::make_unexpected(pack ? device.error() : pack.error());
  }
  const std::string why = seal::refuse_drawn(class_passphrase, seal::class_letters, "a class passphrase");
  if (!why.empty()) {
    return seal::refuse("class passphrase", why, "the passphrase as it was read out in the room");
  }
  auto bench = examination::open_bench(*pack, seal::passphrase_bytes(class_passphrase));
  if (!bench) {
    return tl::make_unexpected(bench.error());
  }
  auto labels = examination::labels_of(*pack, *bench, device->pseudonym);
  if (!labels) {
    return tl::make_unexpected(labels.error());
  }
  auto impl = std::make_unique<Impl>(Impl{std::move(*pack), std::move(*bench), std::move(*device),
                                          session_code, folder, std::move(*labels)});
  for (const std::string& label : impl->labels) {
    if (const auto seat = impl->seat(label); !seat) { // A slip in the session code is told before any work.
      return tl::make_unexpected(seat.error());
    }
  }
  return ExamRoom(std::move(impl));
}

const std::string& ExamRoom::title() const {
  return impl_->pack.head.title;
}

unsigned ExamRoom::minutes() const {
  return impl_->pack.head.minutes;
}

const std::string& ExamRoom::pseudonym() const {
  return impl_->device.pseudonym;
}

std::vector<ExamCase> ExamRoom::cases() const {
  std::vector<ExamCase> all;
  for (const std::string& label : impl_->labels) {
    ExamCase one{label, false, false};
    if (const auto seat = impl_->seat(label)) {
      const fs::path log = log_of(*seat, impl_->folder);
      one.begun = fs::exists(log);
      one.handed_in = one.begun && look_into(log).handed_in;
    }
    all.push_back(std::move(one));
  }
  return all;
}

std::optional<std::int64_t> ExamRoom::begun_s() const {
  std::optional<std::int64_t> first;
  for (const std::string& label : impl_->labels) {
    const auto seat = impl_->seat(label);
    std::string text;
    if (!seat || !strict::read_text(chain_of(log_of(*seat, impl_->folder)), text)) {
      continue;
    }
    const auto chain = examination::parse_chain(text, label);
    if (chain && !chain->checkpoints.empty()) {
      const std::int64_t at_s = chain->checkpoints.front().at_s;
      first = first ? std::min(*first, at_s) : at_s;
    }
  }
  return first;
}

tl::expected<Desk, scenario::Problems> ExamRoom::sit(const Ground& ground, const std::string& label) const {
  const auto seat = impl_->seat(label);
  return seat ? Desk::sit(ground, *seat, impl_->device, impl_->folder) : tl::make_unexpected(seat.error());
}

} // namespace matula::desk
