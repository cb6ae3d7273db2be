#pragma once

#include "engine/examination/chain.hpp"
#include "engine/sitting/line_writer.hpp"

#include <filesystem>
#include <functional>
#include <memory>

namespace matula::examination {

/// UTC, seconds since 1970.
using Clock = std::function<std::int64_t()>;

/// Keeps the chain of one sitting beside its log: hears of every line once it is in the log, and writes a
/// signed checkpoint at the beginning, every so many lines, when a sitting is gone on with, and when it is
/// handed in. After a kill the chain is worked out again from the log.
class ChainWriter {
public:
  static constexpr std::uint64_t lines_a_checkpoint = 16;

  /// For a log whose first line has just been written.
  [[nodiscard]] static seal::Maybe<ChainWriter> begin(const std::filesystem::path& file,
                                                      const ChainStart& start, std::string_view first_line,
                                                      const seal::SigningPair& device, Clock clock);
  /// For a log that is there already, `log` its whole text. A chain's file that is not there (killed between
  /// the two) is begun. One that begins otherwise is refused; a log that does not fit its checkpoints is gone
  /// on with, and the checkpoints tell.
  [[nodiscard]] static seal::Maybe<ChainWriter> resume(const std::filesystem::path& file,
                                                       const ChainStart& start, std::string_view log,
                                                       const seal::SigningPair& device, Clock clock);

  /// A line that has been added to the log, without its end.
  void take(std::string_view line);
  /// Signs where the chain stands; what is wrong in words, or "".
  [[nodiscard]] std::string checkpoint(const std::string& why);

  [[nodiscard]] const seal::Hash& last() const { return now_.hash; }
  [[nodiscard]] std::uint64_t records() const { return now_.records; }
  /// Whether the last checkpoint says that the sitting is over.
  [[nodiscard]] bool handed_in() const { return handed_in_; }

private:
  ChainWriter(const ChainStart& start, std::string_view first_line, const seal::SigningPair& device,
              Clock clock, sitting::LineWriter lines);

  const seal::SigningPair* device_;
  Clock clock_;
  sitting::LineWriter lines_;
  seal::Hash start_;
  Checkpoint now_;
  bool handed_in_ = false;
};

} // namespace matula::examination
