#include "engine/drafting/studio.hpp"

#include "engine/assets/world.hpp"
#include "engine/author/recipe_here.hpp"
#include "engine/drafting/form.hpp"
#include "engine/drafting/studio_impl.hpp"
#include "engine/drafting/substances.hpp"
#include "engine/generator/generate.hpp"
#include "engine/strict/disk.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

namespace matula::drafting {

namespace fs = std::filesystem;

namespace {

/// What a case that begins with nothing needs besides a specimen.
std::string plain_text(const author::Shelf& shelf) {
  auto plain = author::plain_case(shelf);
  plain.title = "A new case";
  plain.level = "first";
  plain.story = "Saint Brannoc's Teaching Hospital. One specimen.";
  plain.debrief = "Write here what a competent reader should have come to.";
  plain.patient = {"Jory Menhenick (invented)", "41, male", "Outpatients", "Protein? Sugar?",
                   "Mid-stream, passed 30 minutes ago, clean cup"};
  plain.asked.look = plain.asked.specific_gravity = true;
  plain.asked.procedures = {"heat", "benedict"};
  plain.reagents_out = {"water"};
  for (const auto& key : plain.asked.procedures) {
    const auto* test = shelf.standards->rules.find_test(key);
    (void)author::put_out(shelf.standards->recipes.at(key), test->curve, plain.reagents_out);
  }
  return author::write_case(plain, "# Begun from a plain urine.\n", shelf);
}

tl::expected<std::vector<PatternOffer>, scenario::Problems> read_patterns(const fs::path& folder) {
  std::vector<PatternOffer> offers;
  for (const std::string& key : generator::pattern_keys(folder)) {
    const auto pattern = generator::read_pattern(folder / (key + ".toml"));
    if (!pattern) {
      return tl::make_unexpected(pattern.error());
    }
    std::vector<std::string> tests;
    std::transform(pattern->tests.begin(), pattern->tests.end(), std::back_inserter(tests), spoken);
    offers.push_back({key, tests.empty() ? "what is done with it at the counter"
                                         : fmt::format("{}", fmt::join(tests, ", "))});
  }
  return offers;
}

} // namespace

Studio::Studio(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
Studio::~Studio() = default;

tl::expected<std::unique_ptr<Studio>, scenario::Problems>
Studio::open(const assets::World& world, const scoring::Standards& standards, const Folders& folders) {
  auto shelf = author::load_shelf(world, standards, folders.assets);
  if (!shelf) {
    return tl::make_unexpected(shelf.error());
  }
  auto people = generator::read_people(generator::people_file(folders.assets));
  if (!people) {
    return tl::make_unexpected(people.error());
  }
  auto patterns = read_patterns(generator::patterns_folder(folders.assets));
  if (!patterns) {
    return tl::make_unexpected(patterns.error());
  }
  auto impl = std::make_unique<Impl>(std::move(*shelf), std::move(*people), folders);
  impl->patterns = std::move(*patterns);
  return std::unique_ptr<Studio>(new Studio(std::move(impl)));
}

const std::vector<PatternOffer>& Studio::patterns() const {
  return impl_->patterns;
}

std::vector<fs::path> Studio::own_files() const {
  return strict::files_in(impl_->folders.own, ".toml");
}

std::vector<fs::path> Studio::shipped_files() const {
  return strict::files_in(impl_->folders.shipped, ".toml");
}

void Studio::Impl::begin(std::string text, std::string the_name) {
  showing.drop();
  composing.drop();
  kept.clear();
  made.reset();
  seen = {};
  name = std::move(the_name);
  begun_at = last_version + 1; // What was made for the draft before has another number.
  draft.emplace(std::move(text), name + ".toml", shelf->world->catalogue, begun_at);
  renew();
}

std::string Studio::begin_pattern(const std::string& key, std::uint64_t seed) {
  const auto pattern =
      generator::read_pattern(generator::patterns_folder(impl_->folders.assets) / (key + ".toml"));
  if (!pattern) {
    return scenario::to_text(pattern.error());
  }
  auto variant =
      generator::generate(*pattern, impl_->people, seed, seed == 0, impl_->shelf->world->catalogue);
  if (!variant) {
    return variant.error();
  }
  impl_->store.forget();
  impl_->begin(std::move(variant->text), variant->key);
  return "";
}

std::string Studio::begin_plain() {
  impl_->store.forget();
  impl_->begin(plain_text(*impl_->shelf), "new_case");
  return "";
}

std::string Studio::begin_copy(const fs::path& file) {
  std::string text;
  if (!strict::read_text(file, text)) {
    return file.string() + " cannot be read.";
  }
  if (auto without = strict::remove_value(text, strict::path_from("review"))) {
    text = std::move(*without);
  }
  impl_->store.forget();
  impl_->begin(std::move(text), file.stem().string() + "_2");
  return "";
}

std::string Studio::begin_own(const fs::path& file) {
  std::string text;
  std::string problem = impl_->store.open(file, text);
  if (problem.empty()) {
    impl_->begin(std::move(text), file.stem().string());
  }
  return problem;
}

void Studio::close() {
  impl_->showing.drop();
  impl_->composing.drop();
  impl_->draft.reset();
  impl_->kept.clear();
  impl_->made.reset();
}

bool Studio::begun() const {
  return impl_->draft.has_value();
}

std::string Studio::suggested_name() const {
  return impl_->name;
}

bool Studio::unsaved() const {
  return impl_->draft && impl_->store.differs(impl_->draft->text());
}

fs::path Studio::file() const {
  return impl_->store.file().value_or(fs::path());
}

Saved Studio::save(const std::string& name, bool replace) {
  if (!impl_->form.problems.empty()) {
    return {Saved::Outcome::Refused,
            "Not saved: the case could not be opened. " + impl_->form.problems.front()};
  }
  Saved saved = impl_->store.save(name, impl_->draft->text(), replace);
  if (saved.outcome == Saved::Outcome::Written) {
    impl_->name = name;
  }
  return saved;
}

} // namespace matula::drafting
