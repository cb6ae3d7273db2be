#include "engine/examination/pack_layout.hpp"
#include "engine/seal/base32.hpp"
#include "engine/seal/frame.hpp"

namespace matula::examination {

namespace {

constexpr const char* again = "the pack as it was sealed; fetch it again and compare its fingerprint with "
                              "the printed sheet";

seal::Maybe<PackHead> read_head(seal::View header, const std::string& name) {
  seal::ByteReader in(header);
  PackHead head;
  in.fill(head.id);
  head.title = in.text(most_title);
  head.minutes = in.u32();
  head.delete_after = in.text(most_title);
  head.sealed_at_s = static_cast<std::int64_t>(in.u64());
  head.program = in.text(most_title);
  head.effort.passes = in.u64();
  head.effort.memory_bytes = in.u64();
  in.fill(head.salt);
  in.fill(head.commitment);
  in.fill(head.sealing);
  in.fill(head.signing);
  head.bench_bytes = in.u64();
  head.key_bytes = in.u64();
  const std::string why = in.done() ? refuse_head(head) : "a header that is damaged";
  return why.empty() ? seal::Maybe<PackHead>(std::move(head)) : seal::refuse(name, why, again);
}

} // namespace

seal::Maybe<Pack> read_pack(seal::Bytes file, const std::string& name) {
  const auto frame = seal::read_frame(file, seal::Kind::Pack, name);
  if (!frame) {
    return tl::make_unexpected(frame.error());
  }
  auto head = read_head(frame->header, name);
  if (!head) {
    return tl::make_unexpected(head.error());
  }
  // Both sizes are below their limits here, so that the sum cannot overflow.
  const std::uint64_t wanted = wrapped_bytes + head->bench_bytes + head->key_bytes + signature_bytes;
  if (frame->body.size() != wanted) {
    return seal::refuse(name,
                        "a pack of " + std::to_string(file.size()) + " bytes whose header asks for " +
                            std::to_string(frame->head.size() + wanted),
                        again);
  }
  Pack pack{name, {}, std::move(*head), {}, frame->head.size()};
  pack.file = std::move(file);
  const seal::Bytes words = signed_words(pack.head_view(), pack.wrapped_key(), pack.bench(), pack.key());
  seal::ByteReader end(seal::View(pack.file).last(signature_bytes));
  seal::Signature signature{};
  end.fill(signature);
  if (!seal::verify(seal::Signed::Pack, words, signature, pack.head.signing)) {
    return seal::refuse(name, "a pack that was changed or damaged after it was signed", again);
  }
  pack.hash = seal::hash({words});
  return pack;
}

seal::Maybe<Pack> load_pack(const std::filesystem::path& file) {
  auto bytes = seal::read_bytes(file, "an examination pack");
  return bytes ? read_pack(std::move(*bytes), file.string()) : tl::make_unexpected(bytes.error());
}

std::string fingerprint(const Pack& pack) {
  constexpr std::size_t letters = 16;
  return seal::in_groups(seal::base32(pack.hash).substr(0, letters));
}

seal::Maybe<BenchSection> open_bench(const Pack& pack, const seal::Secret& class_passphrase) {
  const auto class_key = seal::stretch(class_passphrase, pack.head.salt, pack.head.effort);
  if (!class_key) {
    return seal::refuse(pack.name, class_key.error(), "a machine with more free memory");
  }
  if (!seal::same(seal::commitment(*class_key), pack.head.commitment)) {
    return seal::refuse(pack.name, "another passphrase than the one this pack is sealed with",
                        "the passphrase of the printed sheet");
  }
  const auto content_key = seal::open(pack.wrapped_key(), pack.head_view(), *class_key);
  const auto bench = content_key ? seal::open(pack.bench(), pack.head_view(), *content_key) : std::nullopt;
  if (!bench) {
    return seal::refuse(pack.name, "a bench section that does not open", again);
  }
  auto section = read_bench(bench->view(), pack.name);
  if (section && section->pack != pack.head.id) {
    return seal::refuse(pack.name, "the bench section of another pack", again);
  }
  return section;
}

seal::Maybe<KeySection> open_key(const Pack& pack, const seal::InstructorKeys& keys) {
  if (pack.head.signing != keys.signing.open_half() || pack.head.sealing != keys.sealing.open_half()) {
    return seal::refuse(pack.name, "a pack that other keys have sealed", "the keys it was sealed with");
  }
  const auto key = keys.sealing.open(pack.key());
  if (!key) {
    return seal::refuse(pack.name, "an answer-key section that does not open", again);
  }
  auto section = read_key(*key, pack.name);
  if (section && section->pack != pack.head.id) {
    return seal::refuse(pack.name, "the answer-key section of another pack", again);
  }
  return section;
}

} // namespace matula::examination
