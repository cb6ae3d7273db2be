#include "engine/examination/returned.hpp"
#include "engine/seal/frame.hpp"

#include <cstddef>
#include <cstdint>

using namespace matula;

/// Any bytes are refused with words or read: as a result, as what was sealed in one, as a chain. What can be
/// read is checked against a pack it does not belong to, and is never found in order.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const seal::InstructorKeys keys = seal::make_keys("fuzz");
  static const examination::Pack pack{};
  static const examination::KeySection key{};
  const seal::View bytes(data, size);
  const auto result = examination::open_result(bytes, keys, "fuzz");
  if (result || result.error().front().found.empty()) {
    __builtin_trap(); // Nobody has sealed anything to these keys.
  }
  if (const auto chain = examination::parse_chain(seal::text_of(bytes), "fuzz")) {
    std::string again = examination::to_line(chain->start) + "\n";
    for (const auto& one : chain->checkpoints) {
      again += examination::to_line(one) + "\n";
    }
    const auto second = examination::parse_chain(again, "again");
    if (!second || !(second->start == chain->start)) {
      __builtin_trap();
    }
  }
  examination::PackId outside{};
  seal::ByteReader(bytes).fill(outside);
  if (const auto plain = examination::read_handed_in(outside, bytes, "fuzz")) {
    if (!examination::check(*plain, "fuzz", pack, key, {}).to_be_reviewed()) {
      __builtin_trap();
    }
  }
  return 0;
}
