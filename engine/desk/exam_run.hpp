#pragma once

#include "engine/desk/closed.hpp"
#include "engine/examination/chain_writer.hpp"
#include "engine/examination/seat.hpp"

#include <optional>

namespace matula::desk {

/// The signed side of an examination's sitting: its chain, and what is handed in.
class ExamRun {
public:
  /// For a log that has just been begun or gone on with. `device` signs.
  [[nodiscard]] static seal::Maybe<std::unique_ptr<ExamRun>>
  open(const examination::Seat& seat, const seal::Device& device, const std::filesystem::path& log_file);

  void take(const std::string& line) { chain_->take(line); }

  /// Signs the end and writes the result file beside the log; the problem in words, or empty.
  [[nodiscard]] std::string close();

  [[nodiscard]] const examination::Seat& seat() const { return seat_; }
  [[nodiscard]] const std::optional<Closed>& closed() const { return closed_; }

private:
  ExamRun(examination::Seat seat, const seal::Device& device, std::filesystem::path log_file)
      : seat_(std::move(seat)), device_(device.seed.view()), log_file_(std::move(log_file)) {}

  examination::Seat seat_;
  seal::SigningPair device_;
  std::filesystem::path log_file_;
  std::optional<examination::ChainWriter> chain_;
  std::optional<Closed> closed_;
};

/// Where the signed chain of a log lies.
[[nodiscard]] std::filesystem::path chain_of(const std::filesystem::path& log_file);

/// Where the log of a seat lies in a folder.
[[nodiscard]] std::filesystem::path log_of(const examination::Seat& seat,
                                           const std::filesystem::path& folder);

} // namespace matula::desk
