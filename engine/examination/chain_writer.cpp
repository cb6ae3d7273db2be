#include "engine/examination/chain_writer.hpp"

#include "engine/strict/file.hpp"

namespace matula::examination {

namespace {

const std::string over = "handed in";

} // namespace

ChainWriter::ChainWriter(const ChainStart& start, std::string_view first_line,
                         const seal::SigningPair& device, Clock clock, sitting::LineWriter lines)
    : device_(&device), clock_(std::move(clock)), lines_(std::move(lines)),
      start_(chain_start(start, first_line)) {
  now_.hash = start_;
}

seal::Maybe<ChainWriter> ChainWriter::begin(const std::filesystem::path& file, const ChainStart& start,
                                            std::string_view first_line, const seal::SigningPair& device,
                                            Clock clock) {
  auto lines = sitting::LineWriter::create(file, to_line(start));
  if (!lines) {
    return tl::make_unexpected(lines.error());
  }
  ChainWriter writer(start, first_line, device, std::move(clock), std::move(*lines));
  if (const std::string why = writer.checkpoint("begun"); !why.empty()) {
    return seal::refuse(file.string(), why, "room on the disk");
  }
  return writer;
}

seal::Maybe<ChainWriter> ChainWriter::resume(const std::filesystem::path& file, const ChainStart& start,
                                             std::string_view log, const seal::SigningPair& device,
                                             Clock clock) {
  const auto logged = whole_lines(log);
  std::string text;
  if (logged.empty()) {
    return seal::refuse(file.string(), "a chain for a log without a first line", "the log it belongs to");
  }
  const bool there = strict::read_text(file, text) && text.find('\n') != std::string::npos;
  const auto chain = there ? parse_chain(text, file.string()) : seal::Maybe<Chain>(Chain{start, {}, 0});
  if (!chain) {
    return tl::make_unexpected(chain.error());
  }
  if (!(chain->start == start)) {
    return seal::refuse(file.string(),
                        "the chain of another sitting, session or device (it was begun by '" +
                            chain->start.pseudonym + "' with session code " + chain->start.nonce + ")",
                        "the pseudonym, session code and device key the sitting was begun with");
  }
  if (!there) {
    std::error_code ignored; // Killed while its first line was written; create() says what else is wrong.
    std::filesystem::remove(file, ignored);
  }
  auto lines = there ? sitting::LineWriter::reopen(file, chain->good_bytes)
                     : sitting::LineWriter::create(file, to_line(start));
  if (!lines) {
    return tl::make_unexpected(lines.error());
  }
  ChainWriter writer(start, logged.front(), device, std::move(clock), std::move(*lines));
  for (std::size_t i = 1; i < logged.size(); ++i) {
    writer.now_.hash = chain_next(writer.now_.hash, logged[i]);
    ++writer.now_.records;
  }
  writer.handed_in_ = !chain->checkpoints.empty() && chain->checkpoints.back().why == over;
  const char* reason = there || writer.now_.records > 0 ? "resumed" : "begun";
  if (const std::string why = writer.handed_in_ ? "" : writer.checkpoint(reason); !why.empty()) {
    return seal::refuse(file.string(), why, "room on the disk");
  }
  return writer;
}

void ChainWriter::take(std::string_view line) {
  now_.hash = chain_next(now_.hash, line);
  if (++now_.records % lines_a_checkpoint == 0) {
    // A checkpoint that cannot be written now is missing, no more: the last one covers every line.
    (void)checkpoint("counted");
  }
}

std::string ChainWriter::checkpoint(const std::string& why) {
  now_.at_s = clock_();
  now_.why = why;
  now_.signature = sign(now_, start_, *device_);
  if (!lines_.append(to_line(now_))) {
    return "The sitting could not be signed (" + lines_.why() + ").";
  }
  handed_in_ = why == over;
  return "";
}

} // namespace matula::examination
