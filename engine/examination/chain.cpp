#include "engine/examination/chain.hpp"

#include "engine/seal/base32.hpp"

namespace matula::examination {

namespace {

seal::Bytes words_of(const Checkpoint& checkpoint, const seal::Hash& start) {
  seal::ByteWriter words;
  words.raw(start).u64(checkpoint.records).raw(checkpoint.hash);
  words.u64(static_cast<std::uint64_t>(checkpoint.at_s)).text(checkpoint.why);
  return words.take();
}

} // namespace

seal::Hash chain_start(const ChainStart& start, std::string_view first_line) {
  seal::ByteWriter words;
  words.text("matula log-v1").raw(start.pack).text(start.nonce).text(start.pseudonym).text(start.label);
  words.raw(start.device).text(start.program).u64(start.seed).text(first_line);
  return seal::hash({words.bytes()});
}

seal::Hash chain_next(const seal::Hash& before, std::string_view line) {
  return seal::hash({before, seal::view_of(line)});
}

seal::Signature sign(const Checkpoint& checkpoint, const seal::Hash& start, const seal::SigningPair& device) {
  return device.sign(seal::Signed::Checkpoint, words_of(checkpoint, start));
}

bool verify(const Checkpoint& checkpoint, const seal::Hash& start, const seal::Key& device) {
  return seal::verify(seal::Signed::Checkpoint, words_of(checkpoint, start), checkpoint.signature, device);
}

std::string closing_code(const seal::Hash& last) {
  constexpr std::size_t code_bytes = 5;
  return seal::in_groups(seal::base32(seal::View(last).first(code_bytes)));
}

std::vector<std::string_view> whole_lines(std::string_view text) {
  std::vector<std::string_view> lines;
  std::size_t from = 0;
  for (std::size_t end = text.find('\n'); end != std::string_view::npos; end = text.find('\n', from)) {
    lines.push_back(text.substr(from, end - from));
    from = end + 1;
  }
  return lines;
}

} // namespace matula::examination
