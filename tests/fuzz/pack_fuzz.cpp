#include "engine/examination/pack.hpp"
#include "engine/examination/pack_layout.hpp"
#include "engine/scenario/problem.hpp"
#include "engine/seal/device.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>

using namespace matula;

namespace {

void must_say(const scenario::Problems& problems) {
  if (problems.empty() || problems.front().found.empty() || problems.front().expected.empty()) {
    __builtin_trap();
  }
}

/// Signs the bytes anew where they have the shape of a pack, so that what lies behind the signature is
/// reached too. The signing key in the header is replaced by the fuzzer's own.
seal::Bytes signed_anew(seal::Bytes file) {
  static const seal::InstructorKeys keys = seal::make_keys("fuzz");
  const auto pack_head = file.size() > 14 ? file[10] | (file[11] << 8U) : 0;
  const std::size_t head = 14 + static_cast<std::size_t>(pack_head);
  constexpr std::size_t sizes = 16;
  if (head < 14 + sizes + sizeof(seal::Key) ||
      file.size() < head + examination::wrapped_bytes + examination::signature_bytes) {
    return file;
  }
  const auto own = keys.signing.open_half();
  std::copy(own.begin(), own.end(),
            file.begin() + static_cast<std::ptrdiff_t>(head - sizes - sizeof(seal::Key)));
  const seal::View all(file);
  seal::ByteReader lengths(all.subspan(head - sizes, sizes));
  const std::uint64_t bench = lengths.u64();
  const std::size_t rest = file.size() - head - examination::wrapped_bytes - examination::signature_bytes;
  if (bench > rest) {
    return file;
  }
  const auto words =
      examination::signed_words(all.first(head), all.subspan(head, examination::wrapped_bytes),
                                all.subspan(head + examination::wrapped_bytes, bench),
                                all.subspan(head + examination::wrapped_bytes + bench, rest - bench));
  const auto signature = keys.signing.sign(seal::Signed::Pack, words);
  std::copy(signature.begin(), signature.end(), file.end() - examination::signature_bytes);
  return file;
}

} // namespace

/// Any bytes are refused with words or read; what is read as contents is written to the same bytes.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const seal::View bytes(data, size);
  const seal::Bytes file(bytes.begin(), bytes.end());
  for (const auto& one : {file, signed_anew(file)}) {
    const auto pack = examination::read_pack(one, "fuzz");
    if (pack) {
      (void)examination::fingerprint(*pack);
      if (pack->head.effort.memory_bytes <= 65536) {
        const auto bench = examination::open_bench(*pack, seal::Secret(seal::view_of("fuzz")));
        if (!bench) {
          must_say(bench.error());
        }
      }
    } else {
      must_say(pack.error());
    }
  }
  if (const auto bench = examination::read_bench(bytes, "fuzz");
      bench && examination::bytes_of(*bench) != file) {
    __builtin_trap();
  }
  if (const auto key = examination::read_key(bytes, "fuzz"); key && examination::bytes_of(*key) != file) {
    __builtin_trap();
  }
  if (const auto card = seal::read_card(bytes, "fuzz"); !card) {
    must_say(card.error());
  }
  if (const auto device = seal::read_device(bytes, "fuzz"); !device) {
    must_say(device.error());
  }
  return 0;
}
