#include "engine/practice/store.hpp"

#include "engine/generator/generate.hpp"
#include "engine/scoring/ladder.hpp"

namespace matula::practice {

tl::expected<std::shared_ptr<const Store>, scenario::Problems>
load_store(const assets::World& world, const scoring::Standards& standards,
           const std::filesystem::path& assets_folder) {
  auto rules = load_rules(assets_folder);
  if (!rules) {
    return tl::make_unexpected(rules.error());
  }
  auto learning = learner::load_rules(assets_folder);
  if (!learning) {
    return tl::make_unexpected(learning.error());
  }
  auto plain = scoring::load_plain_urine(assets_folder);
  if (!plain) {
    return tl::make_unexpected(plain.error());
  }
  auto people = generator::read_people(generator::people_file(assets_folder));
  if (!people) {
    return tl::make_unexpected(people.error());
  }
  const auto& book = reception::shipped_book();
  if (!book) {
    return tl::make_unexpected(book.error());
  }
  auto store = std::make_shared<Store>();
  for (const std::string& key : rules->deliveries.patterns) {
    auto pattern = generator::read_pattern(generator::patterns_folder(assets_folder) / (key + ".toml"));
    if (!pattern) {
      return tl::make_unexpected(pattern.error());
    }
    store->patterns.push_back(std::move(*pattern));
  }
  store->world = &world;
  store->standards = &standards;
  store->book = &*book;
  store->rules = std::move(*rules);
  store->learning = std::move(*learning);
  store->plain = std::move(*plain);
  store->people = std::move(*people);
  return std::shared_ptr<const Store>(std::move(store));
}

} // namespace matula::practice
