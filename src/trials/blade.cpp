#include "trials/blade.h"

#include "base/plain_number.h"

namespace keenfall::trials {

std::string in_words(const Hardness& hardness) {
  std::string words = base::plain_number(hardness.reading);
  if (hardness.error) words += " ± " + base::plain_number(*hardness.error);
  words += hardness.scale == HardnessScale::rockwell_c ? " HRC" : " HV";
  switch (hardness.how_known) {
    case HowKnown::declared_by_maker:
      return words + ", declared by the maker";
    case HowKnown::mill_sheet:
      return words + ", by the mill's sheet";
    case HowKnown::measured:
      return words + ", measured";
    case HowKnown::not_said:
      break;
  }
  return words;
}

}  // namespace keenfall::trials
