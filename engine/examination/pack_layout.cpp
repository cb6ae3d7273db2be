#include "engine/examination/pack_layout.hpp"

#include "engine/seal/names.hpp"

namespace matula::examination {

seal::View Pack::wrapped_key() const {
  return seal::View(file).subspan(head_bytes, wrapped_bytes);
}
seal::View Pack::bench() const {
  return seal::View(file).subspan(head_bytes + wrapped_bytes, head.bench_bytes);
}
seal::View Pack::key() const {
  return seal::View(file).subspan(head_bytes + wrapped_bytes + head.bench_bytes, head.key_bytes);
}

seal::Bytes header_of(const PackHead& head) {
  seal::ByteWriter out;
  out.raw(head.id).text(head.title).u32(head.minutes).text(head.delete_after);
  out.u64(static_cast<std::uint64_t>(head.sealed_at_s)).text(head.program);
  out.u64(head.effort.passes).u64(head.effort.memory_bytes).raw(head.salt).raw(head.commitment);
  out.raw(head.sealing).raw(head.signing).u64(head.bench_bytes).u64(head.key_bytes);
  return out.take();
}

seal::Bytes signed_words(seal::View head, seal::View wrapped, seal::View bench, seal::View key) {
  seal::ByteWriter words;
  for (const seal::View part : {head, wrapped, bench, key}) {
    words.raw(seal::hash({part}));
  }
  return words.take();
}

bool is_date(std::string_view words) {
  constexpr std::string_view shape = "dddd-dd-dd";
  if (words.size() != shape.size()) {
    return false;
  }
  for (std::size_t i = 0; i < shape.size(); ++i) {
    const bool digit = words[i] >= '0' && words[i] <= '9';
    if (shape[i] == '-' ? words[i] != '-' : !digit) {
      return false;
    }
  }
  const auto two = [&](std::size_t at) { return (words[at] - '0') * 10 + (words[at + 1] - '0'); };
  return two(5) >= 1 && two(5) <= 12 && two(8) >= 1 && two(8) <= 31;
}

std::string refuse_head(const PackHead& head) {
  if (head.title.empty() || !seal::is_line(head.title, most_title)) {
    return "a title that is empty, too long or not plain words";
  }
  if (head.minutes < 1 || head.minutes > most_minutes) {
    return "an examination of " + std::to_string(head.minutes) + " minutes";
  }
  if (!is_date(head.delete_after)) {
    return "a deletion date that is none";
  }
  if (!seal::is_line(head.program, most_title)) {
    return "a program version that is not plain words";
  }
  if (head.bench_bytes > most_bench_bytes || head.key_bytes > most_key_bytes) {
    return "sections said to be " + std::to_string(head.bench_bytes >> 20U) + " and " +
           std::to_string(head.key_bytes >> 20U) + " MiB long";
  }
  return seal::refuse_effort(head.effort);
}

} // namespace matula::examination
