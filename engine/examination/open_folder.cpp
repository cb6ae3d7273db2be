#include "engine/examination/returned.hpp"
#include "engine/examination/time_taken.hpp"
#include "engine/seal/frame.hpp"
#include "engine/strict/disk.hpp"

#include <algorithm>
#include <set>
#include <tuple>

namespace matula::examination {

namespace {

namespace fs = std::filesystem;

seal::Maybe<std::vector<fs::path>> results_in(const fs::path& folder) {
  if (!strict::is_readable_folder(folder)) {
    return seal::refuse(folder.string(), "no readable folder", "the folder of the returned results");
  }
  return strict::files_in(folder, ".result");
}

void add(Returned& to, const std::string& words, Check::State state) {
  to.checks.push_back({"copies", state, words});
}

/// The same sitting handed in twice is kept once and said; two sittings of one learner at one case are both
/// kept and both said.
void tell_copies(std::vector<Returned>& sittings) {
  std::vector<Returned> kept;
  for (auto& one : sittings) {
    bool is_copy = false;
    for (auto& other : kept) {
      if (other.pseudonym != one.pseudonym || other.label != one.label) {
        continue;
      }
      if (other.log == one.log && other.to_be_reviewed() == one.to_be_reviewed()) {
        is_copy = true;
        add(other, "the same sitting was handed in again as " + one.file, Check::State::Good);
        break;
      }
      const std::string words = "two different sittings of '" + one.pseudonym + "' at '" + one.label + "': ";
      add(other, words + "the other is " + one.file, Check::State::ToBeReviewed);
      add(one, words + "the other is " + other.file, Check::State::ToBeReviewed);
    }
    if (!is_copy) {
      kept.push_back(std::move(one));
    }
  }
  sittings = std::move(kept);
}

std::vector<std::string> outstanding(const KeySection& key, const std::vector<Returned>& sittings) {
  std::set<std::pair<std::string, std::string>> there;
  for (const auto& one : sittings) {
    there.emplace(one.pseudonym, one.label);
  }
  std::vector<std::string> missing;
  for (const auto& student : key.students) {
    for (const auto& one : student.cases) {
      if (there.count({student.pseudonym, one.label}) == 0) {
        missing.push_back(student.pseudonym + ", " + one.label);
      }
    }
  }
  return missing;
}

} // namespace

seal::Maybe<ReturnedFolder> open_folder(const fs::path& folder, const Pack& pack, const KeySection& key,
                                        const seal::InstructorKeys& keys, const Register& held,
                                        const std::function<void(std::size_t, std::size_t)>& told) {
  const auto files = results_in(folder);
  if (!files) {
    return tl::make_unexpected(files.error());
  }
  ReturnedFolder found;
  for (std::size_t i = 0; i < files->size(); ++i) {
    const std::string name = (*files)[i].string();
    const auto bytes = seal::read_bytes((*files)[i], "a sealed result");
    const auto result = bytes ? open_result(*bytes, keys, name) : tl::make_unexpected(bytes.error());
    if (result) {
      found.sittings.push_back(check(*result, name, pack, key, held));
    } else {
      found.unreadable.insert(found.unreadable.end(), result.error().begin(), result.error().end());
    }
    if (told) {
      told(i + 1, files->size());
    }
  }
  std::stable_sort(found.sittings.begin(), found.sittings.end(), [](const Returned& a, const Returned& b) {
    return std::tie(a.pseudonym, a.label) < std::tie(b.pseudonym, b.label);
  });
  tell_copies(found.sittings);
  tell_time_of_all(found.sittings, pack);
  found.outstanding = outstanding(key, found.sittings);
  return found;
}

} // namespace matula::examination
