#pragma once

#include "engine/seal/pairs.hpp"
#include "engine/seal/refusal.hpp"

#include <filesystem>
#include <map>

namespace matula::seal {

/// The key of one learner's machine, by which a sitting is known to come from there.
struct Device {
  std::string pseudonym;
  Secret seed;
  SigningPair signing;
};

/// A new one; `pseudonym` must be a name (names.hpp).
[[nodiscard]] Device make_device(const std::string& pseudonym);

/// As a file for its owner alone: no passphrase, so that it can be used in the examination room without one.
[[nodiscard]] Bytes to_file(const Device& device);
[[nodiscard]] Maybe<Device> read_device(View file, const std::string& name);
/// The same of a file.
[[nodiscard]] Maybe<Device> load_device(const std::filesystem::path& file);

/// The learner's card that the instructor collects: pseudonym and open half, a small text.
[[nodiscard]] std::string card_of(const Device& device);

struct Card {
  std::string pseudonym;
  Key key{};
};
[[nodiscard]] Maybe<Card> parse_card(const std::string& text, const std::string& name);

/// Every card of a folder (*.toml), by pseudonym. A pseudonym that is there twice is a problem.
[[nodiscard]] Maybe<std::map<std::string, Key>> read_cards(const std::filesystem::path& folder);

} // namespace matula::seal
