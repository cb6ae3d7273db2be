#include "engine/examination/open_returned.hpp"

#include "engine/strict/file.hpp"

#include <nlohmann/json.hpp>

namespace matula::examination {

namespace {

using nlohmann::ordered_json;
using State = Check::State;

constexpr const char* good = "good";
constexpr const char* to_be_reviewed = "to be reviewed";
constexpr const char* not_checked = "not checked";

const char* word_of(State state) {
  return state == State::Good ? good : state == State::ToBeReviewed ? to_be_reviewed : not_checked;
}

seal::Maybe<Register> held_against(const ReturnedFiles& files) {
  Register held;
  if (!files.cards.empty()) {
    auto cards = seal::read_cards(files.cards);
    if (!cards) {
      return tl::make_unexpected(cards.error());
    }
    held.devices = std::move(*cards);
  }
  if (!files.codes.empty()) {
    auto codes = read_codes(files.codes);
    if (!codes) {
      return tl::make_unexpected(codes.error());
    }
    held.codes = std::move(*codes);
  }
  return held;
}

} // namespace

bool OpenedReturns::rules_changed(const std::filesystem::path& assets_folder) const {
  std::string now;
  return strict::read_text(assets_folder / "scoring" / "rules.toml", now) && now != rules;
}

seal::Maybe<OpenedReturns> open_returned(const ReturnedFiles& files, const seal::AskPassphrase& ask,
                                         const std::function<void(std::size_t, std::size_t)>& told) {
  auto pack = load_pack(files.pack);
  auto held = held_against(files);
  if (!pack || !held) {
    return tl::make_unexpected(pack ? held.error() : pack.error());
  }
  auto keys = seal::load_keys(files.keys, ask);
  if (!keys) {
    return tl::make_unexpected(keys.error());
  }
  auto key = open_key(*pack, *keys);
  if (!key) {
    return tl::make_unexpected(key.error());
  }
  auto found = open_folder(files.folder, *pack, *key, *keys, *held, told);
  if (!found) {
    return tl::make_unexpected(found.error());
  }
  return OpenedReturns{std::move(*keys), std::move(*pack), std::move(held->devices), std::move(key->rules),
                       std::move(*found)};
}

std::string words_of(const std::string& state, const std::string& what, const std::string& words) {
  if (state == good && what != "copies") {
    return "";
  }
  return (state == good ? "noted" : state) + ": " + what + ": " + words;
}

std::vector<std::string> words_of(const std::vector<Check>& checks) {
  std::vector<std::string> all;
  for (const Check& one : checks) {
    if (std::string words = words_of(word_of(one.state), one.what, one.words); !words.empty()) {
      all.push_back(std::move(words));
    }
  }
  return all;
}

ordered_json checks_json(const std::vector<Check>& checks) {
  auto all = ordered_json::array();
  for (const Check& one : checks) {
    all.push_back({{"check", one.what}, {"state", word_of(one.state)}, {"words", one.words}});
  }
  return all;
}

std::string kept_checks(const Returned& returned) {
  return ordered_json{{"to_be_reviewed", returned.to_be_reviewed()},
                      {"closing_code", returned.closing_code},
                      {"checks", checks_json(returned.checks)}}
      .dump();
}

} // namespace matula::examination
