#include "engine/seal/device.hpp"

#include "engine/seal/base32.hpp"
#include "engine/seal/frame.hpp"
#include "engine/seal/names.hpp"
#include "engine/strict/disk.hpp"
#include "engine/strict/table.hpp"

#include <algorithm>

namespace matula::seal {

namespace {

constexpr std::size_t seed_size = 32;
constexpr std::size_t longest_name = 40;
constexpr std::size_t key_check = 4;

Hash sum_of(View head, View seed) {
  return hash({view_of("matula device-v1"), head, seed});
}

Device device_of(const std::string& pseudonym, Secret seed) {
  SigningPair signing(seed.view());
  return {pseudonym, std::move(seed), std::move(signing)};
}

} // namespace

Device make_device(const std::string& pseudonym) {
  return device_of(pseudonym, Secret::random(seed_size));
}

Bytes to_file(const Device& device) {
  Bytes whole =
      head_of(Kind::Device, ByteWriter().text(device.pseudonym).raw(device.signing.open_half()).take());
  const Hash sum = sum_of(whole, device.seed.view());
  return ByteWriter().raw(whole).raw(device.seed.view()).raw(sum).take();
}

Maybe<Device> read_device(View file, const std::string& name) {
  const auto frame = read_frame(file, Kind::Device, name);
  if (!frame) {
    return tl::make_unexpected(frame.error());
  }
  ByteReader in(frame->header);
  const std::string pseudonym = in.text(longest_name);
  Key open_half{};
  in.fill(open_half);
  ByteReader body(frame->body);
  const View seed = body.raw(seed_size);
  Hash sum{};
  body.fill(sum);
  if (!in.done() || !body.done() || !is_name(pseudonym) || !same(sum, sum_of(frame->head, seed))) {
    return refuse(name, "a device key that is damaged or cut off",
                  "the file as it was made; a new key must be registered anew");
  }
  Device device = device_of(pseudonym, Secret(seed));
  if (device.signing.open_half() != open_half) {
    return refuse(name, "a device key whose halves do not belong together", "the file as it was made");
  }
  return device;
}

Maybe<Device> load_device(const std::filesystem::path& file) {
  auto bytes = read_bytes(file, "a learner's device key");
  if (!bytes) {
    return tl::make_unexpected(bytes.error());
  }
  auto device = read_device(*bytes, file.string());
  wipe(*bytes);
  return device;
}

std::string card_of(const Device& device) {
  return "# A learner's card: give it to your instructor before the examination. It holds no secret.\n"
         "[learner_card]\npseudonym = \"" +
         device.pseudonym + "\"\nkey = \"" +
         in_groups(with_check(base32(device.signing.open_half()), key_check)) + "\"\n";
}

Maybe<Card> parse_card(const std::string& text, const std::string& name) {
  strict::File file(text, name);
  const strict::Table table = file.root().table("learner_card");
  Card card{table.text("pseudonym"), {}};
  if (!card.pseudonym.empty() && !is_name(card.pseudonym)) {
    table.complain("pseudonym", "one to 40 plain letters, digits, '-' and '_'");
  }
  const std::string written = table.text("key");
  const auto letters = without_check(tidy(written), key_check);
  const auto bytes = letters ? from_base32(*letters) : std::nullopt;
  if (!written.empty() && (!bytes || bytes->size() != card.key.size())) {
    table.complain("key", "the key as it stands on the learner's card, every letter");
  }
  if (auto problems = file.finish(); !problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  std::copy(bytes->begin(), bytes->end(), card.key.begin());
  return card;
}

Maybe<std::map<std::string, Key>> read_cards(const std::filesystem::path& folder) {
  std::map<std::string, Key> cards;
  scenario::Problems problems;
  if (!strict::is_readable_folder(folder)) {
    return refuse(folder.string(), "no readable folder", "the folder of the learners' cards");
  }
  for (const auto& file : strict::files_in(folder, ".toml")) {
    std::string text;
    (void)strict::read_text(file, text); // A file that cannot be read is an empty one, and no card.
    const auto card = parse_card(text, file.string());
    if (!card) {
      problems.insert(problems.end(), card.error().begin(), card.error().end());
    } else if (!cards.emplace(card->pseudonym, card->key).second) {
      problems.push_back({file.string(), 0, 0, "", "a second card of '" + card->pseudonym + "'",
                          "one card a learner; ask which of the two is right"});
    }
  }
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  if (cards.empty()) {
    return refuse(folder.string(), "a folder without learners' cards", "files NAME.toml with [learner_card]");
  }
  return cards;
}

} // namespace matula::seal
