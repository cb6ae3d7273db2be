#pragma once

#include "engine/desk/desk.hpp"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace matula::desk {

/// An examination pack that lies in a folder and has not been opened.
struct PackOnOffer {
  std::filesystem::path file;
  std::string title;
  unsigned minutes = 0;
  std::string fingerprint; ///< To be compared with the sheet in the room.
  std::string problem;     ///< Why it cannot be used; empty when it can.
};

/// A learner's device key that lies there.
struct DeviceOnOffer {
  std::filesystem::path file;
  std::string pseudonym;
  std::string problem;
};

/// By file name; a folder that is not there holds nothing.
[[nodiscard]] std::vector<PackOnOffer> packs_in(const std::filesystem::path& folder);
[[nodiscard]] std::vector<DeviceOnOffer> devices_in(const std::filesystem::path& folder);

/// One case of an opened examination.
struct ExamCase {
  std::string label; ///< "unknown-1"
  bool begun = false;
  bool handed_in = false;
};

/// The learner's side of an examination: the opened pack and the learner's cases in it. The specimens stay
/// inside.
class ExamRoom {
public:
  /// Opens a pack with the words read out in the room. Logs and results go into `folder`. Takes about a
  /// second: the passphrase is made costly to guess.
  [[nodiscard]] static tl::expected<ExamRoom, scenario::Problems> open(const std::filesystem::path& pack,
                                                                       const std::filesystem::path& device,
                                                                       const std::string& class_passphrase,
                                                                       const std::string& session_code,
                                                                       const std::filesystem::path& folder);
  ~ExamRoom();
  ExamRoom(ExamRoom&&) noexcept;
  ExamRoom& operator=(ExamRoom&&) noexcept;

  [[nodiscard]] const std::string& title() const;
  [[nodiscard]] unsigned minutes() const;
  [[nodiscard]] const std::string& pseudonym() const;
  /// As they stand on the disk now.
  [[nodiscard]] std::vector<ExamCase> cases() const;

  /// When the first case was begun by this machine's clock, as its chain says, UTC seconds since 1970;
  /// nothing before.
  [[nodiscard]] std::optional<std::int64_t> begun_s() const;

  /// Begins a case or goes on with it; one that is handed in shows its closing code again.
  [[nodiscard]] tl::expected<Desk, scenario::Problems> sit(const Ground& ground,
                                                           const std::string& label) const;

private:
  struct Impl;
  explicit ExamRoom(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

} // namespace matula::desk
