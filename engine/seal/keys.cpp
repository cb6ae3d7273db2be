#include "engine/seal/keys.hpp"

#include "engine/seal/base32.hpp"
#include "engine/seal/frame.hpp"
#include "engine/seal/names.hpp"

#include <sodium.h>

namespace matula::seal {

namespace {

constexpr std::size_t master_size = crypto_kdf_KEYBYTES;
constexpr std::size_t longest_name = 100;
constexpr std::uint64_t sealing_number = 1;
constexpr std::uint64_t signing_number = 2;

Secret derived(const Secret& master, std::uint64_t number) {
  Secret seed(master_size);
  crypto_kdf_derive_from_key(seed.data(), seed.size(), number, "matulaik", master.view().data());
  return seed;
}

struct Header {
  KeysCard card;
  Salt salt{};
  Hash commitment{};
};

Bytes bytes_of(const Header& header) {
  ByteWriter out;
  out.text(header.card.name).u64(header.card.effort.passes).u64(header.card.effort.memory_bytes);
  out.raw(header.salt).raw(header.commitment).raw(header.card.sealing).raw(header.card.signing);
  return out.take();
}

Maybe<Header> read_header(const Frame& frame, const std::string& name) {
  ByteReader in(frame.header);
  Header header;
  header.card.name = in.text(longest_name);
  header.card.effort.passes = in.u64();
  header.card.effort.memory_bytes = in.u64();
  in.fill(header.salt);
  in.fill(header.commitment);
  in.fill(header.card.sealing);
  in.fill(header.card.signing);
  if (!in.done() || !is_line(header.card.name, longest_name) ||
      frame.body.size() != master_size + close_adds) {
    return refuse(name, "locked keys that are damaged or cut off", "the file as it was made, or the backup");
  }
  if (std::string why = refuse_effort(header.card.effort); !why.empty()) {
    return refuse(name, why, "at most 1024 MiB and 10 passes; fetch the file again");
  }
  return header;
}

} // namespace

InstructorKeys keys_from(Secret master, const std::string& name) {
  SealingPair sealing(derived(master, sealing_number).view());
  SigningPair signing(derived(master, signing_number).view());
  return {name, std::move(master), std::move(sealing), std::move(signing)};
}

InstructorKeys make_keys(const std::string& name) {
  return keys_from(Secret::random(master_size), name);
}

std::string fingerprint(const Key& sealing, const Key& signing) {
  constexpr std::size_t letters = 16;
  return in_groups(base32(hash({view_of("matula keys"), sealing, signing})).substr(0, letters));
}

Maybe<Bytes> lock_keys(const InstructorKeys& keys, const Secret& passphrase, const Effort& effort,
                       const std::string& file) {
  if (!is_line(keys.name, longest_name)) {
    return refuse(file, "a name that is too long or not plain words", "at most 100 bytes on one line");
  }
  Header header{{keys.name, keys.sealing.open_half(), keys.signing.open_half(), effort}, {}, {}};
  randombytes_buf(header.salt.data(), header.salt.size());
  const auto key = stretch(passphrase, header.salt, effort);
  if (!key) {
    return refuse(file, key.error(), "a smaller effort");
  }
  header.commitment = commitment(*key);
  Bytes whole = head_of(Kind::Keys, bytes_of(header));
  const Bytes closed = close(keys.master.view(), whole, *key);
  whole.insert(whole.end(), closed.begin(), closed.end());
  return whole;
}

Maybe<KeysCard> read_card(View file, const std::string& name) {
  const auto frame = read_frame(file, Kind::Keys, name);
  if (!frame) {
    return tl::make_unexpected(frame.error());
  }
  return read_header(*frame, name).map([](const Header& header) { return header.card; });
}

Maybe<InstructorKeys> unlock_keys(View file, const Secret& passphrase, const std::string& name) {
  const auto frame = read_frame(file, Kind::Keys, name);
  if (!frame) {
    return tl::make_unexpected(frame.error());
  }
  const auto header = read_header(*frame, name);
  if (!header) {
    return tl::make_unexpected(header.error());
  }
  const auto key = stretch(passphrase, header->salt, header->card.effort);
  if (!key) {
    return refuse(name, key.error(), "a machine with more memory");
  }
  if (!same(commitment(*key), header->commitment)) {
    return refuse(name, "another passphrase than these keys are locked with (or a damaged file)",
                  "the passphrase they were made with");
  }
  auto master = open(frame->body, frame->head, *key);
  if (!master || master->size() != master_size) {
    return refuse(name, "locked keys that were changed after they were made",
                  "the file as it was made, or the backup");
  }
  return keys_from(std::move(*master), header->card.name);
}

Maybe<InstructorKeys> load_keys(const std::filesystem::path& file, const AskPassphrase& ask) {
  const std::string name = file.string();
  const auto bytes = read_bytes(file, "an instructor's locked keys");
  if (!bytes) {
    return tl::make_unexpected(bytes.error());
  }
  if (const auto card = read_card(*bytes, name); !card) {
    return tl::make_unexpected(card.error());
  }
  const auto passphrase = ask();
  if (!passphrase) {
    return tl::make_unexpected(passphrase.error());
  }
  return unlock_keys(*bytes, *passphrase, name);
}

} // namespace matula::seal
