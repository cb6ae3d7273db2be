#include "engine/examination/release.hpp"

#include "engine/seal/frame.hpp"
#include "engine/seal/names.hpp"

namespace matula::examination {

namespace {

constexpr std::size_t most_words = 400;
constexpr std::size_t most_marks = 4194304;
constexpr const char* again = "the released sheet as it was made; ask for the file again";

seal::Bytes fields_of(const Release& release) {
  seal::ByteWriter out;
  out.raw(release.pack).text(release.pseudonym).text(release.label).text(release.case_key);
  out.text(release.closing_code).text(release.marks).text(release.checks).text(release.scenario);
  return out.u64(static_cast<std::uint64_t>(release.at_s)).raw(release.signer).take();
}

seal::Bytes signed_words(const Release& release) {
  const seal::Hash sum = seal::hash({fields_of(release)});
  return {sum.begin(), sum.end()};
}

} // namespace

seal::Maybe<seal::Bytes> seal_release(Release release, const seal::InstructorKeys& keys,
                                      const seal::Key& device, const std::string& name) {
  release.signer = keys.signing.open_half();
  release.signature = keys.signing.sign(seal::Signed::Release, signed_words(release));
  const auto half = seal::sealing_half_of(device);
  const seal::Bytes plain = seal::ByteWriter().raw(fields_of(release)).raw(release.signature).take();
  const auto closed = half ? seal::close_to(*half, plain) : std::nullopt;
  if (!closed) {
    return seal::refuse(name, "a device key that nothing can be sealed to", "the key of the learner's card");
  }
  const seal::Bytes head = seal::head_of(seal::Kind::Release, seal::ByteWriter().raw(release.pack).take());
  return seal::ByteWriter().raw(head).raw(*closed).take();
}

seal::Maybe<Release> open_release(seal::View file, const seal::Device& device, const std::string& name) {
  const auto frame = seal::read_frame(file, seal::Kind::Release, name);
  if (!frame) {
    return tl::make_unexpected(frame.error());
  }
  const auto plain = seal::sealing_pair_of(device.seed.view()).open(frame->body);
  if (!plain) {
    return seal::refuse(name,
                        "a sheet that this device key does not open: it is another learner's, cut off "
                        "or changed",
                        again);
  }
  seal::ByteReader head(frame->header);
  PackId outside{};
  head.fill(outside);
  seal::ByteReader in(*plain);
  Release release;
  in.fill(release.pack);
  for (std::string* words : {&release.pseudonym, &release.label, &release.case_key, &release.closing_code}) {
    *words = in.text(most_words);
  }
  for (std::string* words : {&release.marks, &release.checks, &release.scenario}) {
    *words = in.text(most_marks);
  }
  release.at_s = static_cast<std::int64_t>(in.u64());
  in.fill(release.signer);
  in.fill(release.signature);
  if (!in.done() || !head.done() || outside != release.pack || !seal::is_name(release.pseudonym) ||
      !seal::is_name(release.label) || !seal::is_line(release.case_key, most_words) ||
      !seal::is_text(release.marks) || !seal::is_text(release.checks) || !seal::is_text(release.scenario)) {
    return seal::refuse(name, "a sheet whose contents make no sense", again);
  }
  if (!seal::verify(seal::Signed::Release, signed_words(release), release.signature, release.signer)) {
    return seal::refuse(name, "a sheet whose signature does not fit", again);
  }
  return release;
}

} // namespace matula::examination
