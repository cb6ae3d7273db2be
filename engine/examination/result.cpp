#include "engine/examination/result.hpp"

#include "engine/seal/frame.hpp"
#include "engine/seal/names.hpp"

namespace matula::examination {

namespace {

constexpr std::size_t most_words = 400;
constexpr const char* again = "the result as it was handed in; ask for the file again";

seal::Bytes fields_of(const HandedIn& result) {
  seal::ByteWriter out;
  out.raw(result.pack).text(result.pseudonym).text(result.label).raw(result.device).text(result.program);
  return out.text(result.log).text(result.chain).take();
}

seal::Bytes receipt_words(const HandedIn& result) {
  const seal::Hash sum = seal::hash({fields_of(result)});
  return {sum.begin(), sum.end()};
}

} // namespace

bool receipt_fits(const HandedIn& result) {
  return seal::verify(seal::Signed::Receipt, receipt_words(result), result.receipt, result.device);
}

seal::Maybe<seal::Bytes> seal_result(HandedIn result, const seal::SigningPair& device,
                                     const seal::Key& instructor, const std::string& name) {
  if (result.log.size() > most_log_bytes || result.chain.size() > most_log_bytes) {
    return seal::refuse(name, "a sitting that is too long to hand in", "at most 32 MiB");
  }
  result.device = device.open_half();
  result.receipt = device.sign(seal::Signed::Receipt, receipt_words(result));
  const auto closed =
      seal::close_to(instructor, seal::ByteWriter().raw(fields_of(result)).raw(result.receipt).take());
  if (!closed) {
    return seal::refuse(name, "a pack whose key nothing can be sealed to", "the pack as it was sealed");
  }
  const seal::Bytes head = seal::head_of(seal::Kind::Result, seal::ByteWriter().raw(result.pack).take());
  return seal::ByteWriter().raw(head).raw(*closed).take();
}

seal::Maybe<HandedIn> read_handed_in(const PackId& outside, seal::View plain, const std::string& name) {
  seal::ByteReader in(plain);
  HandedIn result;
  in.fill(result.pack);
  result.pseudonym = in.text(most_words);
  result.label = in.text(most_words);
  in.fill(result.device);
  result.program = in.text(most_words);
  result.log = in.text(most_log_bytes);
  result.chain = in.text(most_log_bytes);
  in.fill(result.receipt);
  if (!in.done() || outside != result.pack || !seal::is_name(result.pseudonym) ||
      !seal::is_name(result.label) || !seal::is_line(result.program, most_words) ||
      !seal::is_text(result.log) || !seal::is_text(result.chain)) {
    return seal::refuse(name, "a result whose contents make no sense", again);
  }
  return result;
}

seal::Maybe<HandedIn> open_result(seal::View file, const seal::InstructorKeys& keys,
                                  const std::string& name) {
  const auto frame = seal::read_frame(file, seal::Kind::Result, name);
  if (!frame) {
    return tl::make_unexpected(frame.error());
  }
  seal::ByteReader head(frame->header);
  PackId outside{};
  head.fill(outside);
  if (!head.done()) {
    return seal::refuse(name, "a result whose header is damaged", again);
  }
  const auto plain = keys.sealing.open(frame->body);
  if (!plain) {
    return seal::refuse(
        name, "a result that these keys do not open: it is sealed to others, cut off or changed", again);
  }
  return read_handed_in(outside, *plain, name);
}

} // namespace matula::examination
