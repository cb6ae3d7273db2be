#include "engine/examination/pack_layout.hpp"
#include "engine/seal/frame.hpp"

#include <algorithm>

namespace matula::examination {

namespace {

void fill(seal::View from, unsigned char* to) {
  std::copy(from.begin(), from.end(), to);
}

PackHead head_for(const PackContents& contents, const seal::InstructorKeys& keys,
                  const seal::Effort& effort) {
  PackHead head;
  fill(seal::random_bytes(head.id.size()), head.id.data());
  fill(seal::random_bytes(head.salt.size()), head.salt.data());
  head.title = contents.title;
  head.minutes = contents.minutes;
  head.delete_after = contents.delete_after;
  head.sealed_at_s = contents.sealed_at_s;
  head.program = MATULA_VERSION;
  head.effort = effort;
  head.sealing = keys.sealing.open_half();
  head.signing = keys.signing.open_half();
  return head;
}

tl::unexpected<scenario::Problems> cannot(const std::string& name, std::string why) {
  return seal::refuse(name, std::move(why), "something that a pack can hold; see docs/examinations.md");
}

} // namespace

seal::Maybe<seal::Bytes> seal_pack(const PackContents& contents, const seal::InstructorKeys& keys,
                                   const seal::Secret& class_passphrase, const seal::Effort& effort,
                                   const std::string& name) {
  for (const auto* students : {&contents.bench, &contents.key}) {
    if (std::string why = refuse_contents(*students); !why.empty()) {
      return cannot(name, std::move(why));
    }
  }
  PackHead head = head_for(contents, keys, effort);
  const seal::Bytes bench = bytes_of(BenchSection{head.id, contents.bench});
  const seal::Bytes key =
      bytes_of(KeySection{head.id, contents.nonce, contents.secret, contents.rules, contents.key});
  head.bench_bytes = bench.size() + seal::close_adds;
  head.key_bytes = key.size() + seal::close_to_adds;
  if (std::string why = refuse_head(head); !why.empty()) {
    return cannot(name, std::move(why));
  }
  const auto class_key = seal::stretch(class_passphrase, head.salt, effort);
  if (!class_key) {
    return cannot(name, class_key.error());
  }
  head.commitment = seal::commitment(*class_key);
  const seal::Bytes top = seal::head_of(seal::Kind::Pack, header_of(head));
  const auto content_key = seal::Secret::random(content_key_bytes);
  const seal::Bytes wrapped = seal::close(content_key.view(), top, *class_key);
  const seal::Bytes closed_bench = seal::close(bench, top, content_key);
  const auto closed_key = seal::close_to(head.sealing, key);
  if (!closed_key) {
    return cannot(name, "keys that nothing can be sealed to");
  }
  const auto signature =
      keys.signing.sign(seal::Signed::Pack, signed_words(top, wrapped, closed_bench, *closed_key));
  seal::ByteWriter file;
  return file.raw(top).raw(wrapped).raw(closed_bench).raw(*closed_key).raw(signature).take();
}

} // namespace matula::examination
