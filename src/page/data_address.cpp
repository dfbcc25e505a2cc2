#include "page/data_address.h"

namespace keenfall::page {

namespace {

// Unreserved characters, and of the reserved ones those that an opaque address may hold.
bool may_stand(char character) {
  const bool is_letter =
      (character >= 'a' && character <= 'z') || (character >= 'A' && character <= 'Z');
  const bool is_digit = character >= '0' && character <= '9';
  constexpr std::string_view kOthers = "-._~,;:=@!*()/?";
  return is_letter || is_digit || kOthers.find(character) != std::string_view::npos;
}

}  // namespace

std::string csv_address(std::string_view csv) {
  constexpr std::string_view kDigits = "0123456789ABCDEF";
  std::string address = "data:text/csv;charset=utf-8,";
  address.reserve(csv.size() + csv.size() / 4);
  for (const char character : csv) {
    if (may_stand(character)) {
      address += character;
      continue;
    }
    const auto byte = static_cast<unsigned char>(character);
    address += '%';
    address += kDigits[byte / kDigits.size()];
    address += kDigits[byte % kDigits.size()];
  }
  return address;
}

}  // namespace keenfall::page
