#pragma once

#include "engine/examination/halves.hpp"
#include "engine/examination/pack.hpp"
#include "engine/scenario/halves.hpp"
#include "engine/seal/device.hpp"
#include "engine/seal/passphrase.hpp"
#include "scenario_support.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <map>
#include <string>
#include <unistd.h>

namespace matula::tests {

/// So small that a test opens it thousands of times a second; never used outside tests.
inline constexpr seal::Effort tiny{1, 8192};

inline const std::string class_words = seal::draw_letters(seal::class_letters);

inline seal::Secret class_passphrase() {
  return seal::passphrase_bytes(class_words);
}

inline const seal::InstructorKeys& instructor() {
  static const seal::InstructorKeys keys = seal::make_keys("A. Instructor (invented)");
  return keys;
}

inline const seal::Device& learner(const std::string& pseudonym = "heron-07") {
  static std::map<std::string, seal::Device> devices;
  const auto known = devices.find(pseudonym);
  return known != devices.end() ? known->second
                                : devices.emplace(pseudonym, seal::make_device(pseudonym)).first->second;
}

/// Two learners, one case each.
inline examination::PackContents contents(const std::string& scenario = good_scenario()) {
  examination::PackContents made;
  made.title = "Spring practical";
  made.minutes = 90;
  made.delete_after = "2027-07-31";
  made.sealed_at_s = 1790000000;
  made.nonce = seal::draw_letters(seal::nonce_letters);
  made.secret.fill(7);
  made.rules = "rules";
  std::uint64_t seed = 100;
  for (const char* pseudonym : {"heron-07", "otter-12"}) {
    const std::string whole = examination::with_seed(scenario, ++seed);
    const auto halves = scenario::halve(whole, "case.toml");
    REQUIRE(halves);
    made.bench.push_back({pseudonym, {{"unknown-1", halves->kept, "", ""}}});
    made.key.push_back({pseudonym, {{"unknown-1", whole, "swollen_ankles", "file case.toml"}}});
  }
  return made;
}

inline seal::Bytes sealed(const examination::PackContents& made) {
  auto file = examination::seal_pack(made, instructor(), class_passphrase(), tiny, "spring.pack");
  REQUIRE(file);
  return *file;
}

inline examination::Pack opened(const seal::Bytes& file) {
  auto pack = examination::read_pack(file, "spring.pack");
  REQUIRE(pack);
  return *pack;
}

/// What a refusal says, in one line; "" when nothing was refused.
template <class Thing> std::string said(const seal::Maybe<Thing>& made) {
  if (made) {
    return "";
  }
  std::string words;
  for (const auto& problem : made.error()) {
    words += problem.file + ": " + problem.found + "; " + problem.expected + "\n";
  }
  return words;
}

inline std::filesystem::path fresh_folder(const std::string& name) {
  const auto folder = std::filesystem::temp_directory_path() / (name + "-" + std::to_string(::getpid()));
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  return folder;
}

} // namespace matula::tests
