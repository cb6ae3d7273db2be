#pragma once

#include "engine/examination/contents.hpp"
#include "engine/seal/keys.hpp"

#include <filesystem>

namespace matula::examination {

/// What anybody may read of a pack.
struct PackHead {
  PackId id{};
  std::string title;            ///< At most 200 bytes on one line.
  std::uint32_t minutes = 0;    ///< How long the examination lasts.
  std::string delete_after;     ///< "2027-07-31": when every copy should be gone.
  std::int64_t sealed_at_s = 0; ///< UTC, seconds since 1970, by the instructor's machine.
  std::string program;          ///< Version it was sealed with.
  seal::Effort effort;
  seal::Salt salt{};
  seal::Hash commitment{}; ///< To the key the class passphrase stands for.
  seal::Key sealing{};     ///< The instructor's, to which results are sealed.
  seal::Key signing{};     ///< The instructor's, by which the pack is signed.
  std::uint64_t bench_bytes = 0;
  std::uint64_t key_bytes = 0;
};

/// A pack as it lies on the disk, its signature checked.
struct Pack {
  std::string name;
  seal::Bytes file;
  PackHead head;
  seal::Hash hash{}; ///< Of everything that is signed: what a sitting's chain begins with.
  std::size_t head_bytes = 0;

  [[nodiscard]] seal::View head_view() const { return seal::View(file).first(head_bytes); }
  [[nodiscard]] seal::View wrapped_key() const;
  [[nodiscard]] seal::View bench() const;
  [[nodiscard]] seal::View key() const;
};

/// What goes into a pack.
struct PackContents {
  std::string title;
  std::uint32_t minutes = 60;
  std::string delete_after;
  std::int64_t sealed_at_s = 0;
  std::string nonce;
  seal::Hash secret{};
  std::string rules;
  std::vector<StudentCases> bench; ///< Bench halves.
  std::vector<StudentCases> key;   ///< Whole scenarios.
};

inline constexpr std::uint64_t most_bench_bytes = 67108864; ///< 64 MiB.
inline constexpr std::uint64_t most_key_bytes = 134217728;  ///< 128 MiB.

/// Seals and signs; the file's bytes. Problems name `name`.
[[nodiscard]] seal::Maybe<seal::Bytes> seal_pack(const PackContents& contents,
                                                 const seal::InstructorKeys& keys,
                                                 const seal::Secret& class_passphrase,
                                                 const seal::Effort& effort, const std::string& name);

/// Takes a pack apart and checks every size, the effort and the signature; nothing is opened.
[[nodiscard]] seal::Maybe<Pack> read_pack(seal::Bytes file, const std::string& name);
/// The same of a file.
[[nodiscard]] seal::Maybe<Pack> load_pack(const std::filesystem::path& file);

/// Sixteen letters of the pack's hash in groups, to be compared with the printed sheet.
[[nodiscard]] std::string fingerprint(const Pack& pack);

[[nodiscard]] seal::Maybe<BenchSection> open_bench(const Pack& pack, const seal::Secret& class_passphrase);
/// Refused for a pack that other keys have signed.
[[nodiscard]] seal::Maybe<KeySection> open_key(const Pack& pack, const seal::InstructorKeys& keys);

/// "2027-07-31", or nothing.
[[nodiscard]] bool is_date(std::string_view words);

} // namespace matula::examination
