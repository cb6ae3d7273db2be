#include "engine/examination/contents.hpp"

#include "engine/seal/names.hpp"

#include <set>

namespace matula::examination {

namespace {

using seal::ByteReader;
using seal::ByteWriter;

constexpr std::size_t most_words = 400;

/// The same students twice over: with what the learner may see, and with everything.
enum class Side { Bench, Key };

void write(ByteWriter& out, const std::vector<StudentCases>& students, Side side) {
  out.u32(static_cast<std::uint32_t>(students.size()));
  for (const auto& student : students) {
    out.text(student.pseudonym).u32(static_cast<std::uint32_t>(student.cases.size()));
    for (const auto& one : student.cases) {
      out.text(one.label).text(one.text);
      if (side == Side::Key) {
        out.text(one.key).text(one.drawn);
      }
    }
  }
}

std::vector<StudentCases> read(ByteReader& in, Side side) {
  std::vector<StudentCases> students(in.count(most_students));
  for (auto& student : students) {
    student.pseudonym = in.text(most_words);
    student.cases.resize(in.count(most_cases));
    for (auto& one : student.cases) {
      one.label = in.text(most_words);
      one.text = in.text(most_text);
      if (side == Side::Key) {
        one.key = in.text(most_words);
        one.drawn = in.text(most_words);
      }
    }
  }
  return students;
}

std::string refuse_case(const CaseText& one) {
  if (!seal::is_name(one.label)) {
    return "a case whose label is no plain word";
  }
  if (one.text.size() > most_text || !seal::is_text(one.text)) {
    return "the case '" + one.label + "', which is too long or not UTF-8";
  }
  return seal::is_line(one.key, most_words) && seal::is_line(one.drawn, most_words)
             ? ""
             : "the case '" + one.label + "', whose key is not plain words";
}

tl::unexpected<scenario::Problems> damaged(const std::string& name, const std::string& why) {
  return seal::refuse(name, "a pack whose contents make no sense: " + why,
                      "a pack as this program makes it; ask for it again");
}

} // namespace

std::string refuse_contents(const std::vector<StudentCases>& students) {
  std::set<std::string> seen;
  if (students.empty() || students.size() > most_students) {
    return std::to_string(students.size()) + " learners";
  }
  for (const auto& student : students) {
    if (!seal::is_name(student.pseudonym) || !seen.insert(student.pseudonym).second) {
      return "a pseudonym that is no plain word or stands there twice";
    }
    if (student.cases.empty() || student.cases.size() > most_cases) {
      return std::to_string(student.cases.size()) + " cases for '" + student.pseudonym + "'";
    }
    std::set<std::string> labels;
    for (const auto& one : student.cases) {
      if (std::string why = refuse_case(one); !why.empty()) {
        return why;
      }
      if (!labels.insert(one.label).second) {
        return "the case '" + one.label + "' twice";
      }
    }
  }
  return "";
}

seal::Bytes bytes_of(const BenchSection& section) {
  ByteWriter out;
  out.raw(section.pack);
  write(out, section.students, Side::Bench);
  return out.take();
}

seal::Bytes bytes_of(const KeySection& section) {
  ByteWriter out;
  out.raw(section.pack).text(section.nonce).raw(section.secret).text(section.rules);
  write(out, section.students, Side::Key);
  return out.take();
}

seal::Maybe<BenchSection> read_bench(seal::View bytes, const std::string& name) {
  ByteReader in(bytes);
  BenchSection section;
  in.fill(section.pack);
  section.students = read(in, Side::Bench);
  const std::string why = in.done() ? refuse_contents(section.students) : "it is cut off, or too long";
  return why.empty() ? seal::Maybe<BenchSection>(std::move(section)) : damaged(name, why);
}

seal::Maybe<KeySection> read_key(seal::View bytes, const std::string& name) {
  ByteReader in(bytes);
  KeySection section;
  in.fill(section.pack);
  section.nonce = in.text(most_words);
  in.fill(section.secret);
  section.rules = in.text(most_text);
  section.students = read(in, Side::Key);
  const std::string why = in.done() ? refuse_contents(section.students) : "it is cut off, or too long";
  return why.empty() ? seal::Maybe<KeySection>(std::move(section)) : damaged(name, why);
}

const CaseText* find_case(const std::vector<StudentCases>& students, const std::string& pseudonym,
                          const std::string& label) {
  for (const auto& student : students) {
    for (const auto& one : student.cases) {
      if (student.pseudonym == pseudonym && one.label == label) {
        return &one;
      }
    }
  }
  return nullptr;
}

} // namespace matula::examination
