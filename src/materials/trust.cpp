#include "materials/trust.h"

#include <algorithm>
#include <array>

namespace keenfall::materials {

namespace {

constexpr auto kSources = std::to_array<Source>({
    {"astm-a295", "ASTM A295 bearing steel, as reprinted on a page", "anitametals.blogspot.com"},
    {"astm-a576",
     "ASTM A576-90b carbon steel bars, table of limits",
     "scribd.com/document/453218806"},
    {"astm-a681",
     "ASTM A681 alloy tool steels, as reprinted grade by grade",
     "theworldmaterial.com"},
    {"azom-6138", "AZoM article 6138, M2 tool steel", "azom.com/article.aspx?ArticleID=6138"},
    {"azom-6144", "AZoM article 6144, W2 tool steel", "azom.com/article.aspx?ArticleID=6144"},
    {"azom-6214", "AZoM article 6214, D2 tool steel", "azom.com/article.aspx?ArticleID=6214"},
    {"azom-6218", "AZoM article 6218, A2 tool steel", "azom.com/article.aspx?ArticleID=6218"},
    {"azom-9106", "AZoM article 9106, L6 tool steel", "azom.com/article.aspx?ArticleID=9106"},
    {"azom-9108", "AZoM article 9108, T15 tool steel", "azom.com/article.aspx?ArticleID=9108"},
    {"azom-9133", "AZoM article 9133, A11 tool steel", "azom.com/article.aspx?ArticleID=9133"},
    {"page-1.2842",
     "data page on 1.2842: tempering values, typical analysis",
     "stainless-steel-tube.org"},
    {"page-1.3343", "data page on M2 and 1.3343", "astmsteel.com"},
    {"page-420", "data page on type 420", "rolledmetalproducts.com"},
    {"page-440c", "data page on type 440C", "qinghesteels.com"},
    {"page-52100", "data page on 52100", "aobosteel.com"},
    {"page-l6", "data page on L6: tempering values", "diamondmetals.com/l6"},
    {"tools-11-1", "Table 11-1 of a tool steel guide (high-speed steels)", "rewon.com.my"},
    {"en-10132-4",
     "EN 10132-4 cold-rolled strip for springs, as reprinted on a page",
     "gdcgoodsteels.com (c75s-spring-steel)"},
    {"en-10088-page",
     "EN 10088 stainless steels, as reprinted on a page",
     "readgur.com/doc/173720"},
    {"en-10088-3",
     "EN 10088-3 stainless steels, as reprinted on a page",
     "metalleschmidt.de/en/wire/stainless-steel"},
    {"llewellyn-hudd",
     "D. T. Llewellyn, R. C. Hudd: Steels: Metallurgy and Applications, 3rd ed., EN 10088 table",
     "issuhub.com/view/index?id=3288&pageIndex=319"},
    {"en-10132-memory", "EN 10132-4, recalled", ""},
    {"en-10088-memory", "EN 10088, recalled", ""},
    {"iso-4957-memory", "ISO 4957 tool steels, recalled", ""},
    {"sae-memory", "SAE J403, SAE J404, recalled", ""},
    {"aisi-memory", "AISI/ASTM grade limits, recalled", ""},
    {"trade-memory", "usual practice in the knife trade, recalled; no source", ""},
    {"carbides-memory", "general literature on tool steels, recalled; take as +/- 30 %", ""},
    {"jis-r6001-1987", "JIS R 6001:1987, electrical resistance method", "evers.c.ooco.jp/JIS.html"},
    {"sizes", "sizes.com, page on sandpaper", "sizes.com/tools/sandpaper.htm"},
    {"p-cami-list",
     "table of ISO/FEPA-P and CAMI sizes, 24 March 2008",
     "stusshed.wordpress.com/2008/03/24"},
    {"fepa-42-memory", "FEPA 42 / ISO 8486-2 (FEPA-F microgrits), recalled", ""},
    {"fepa-42-d-1986",
     "FEPA 42-D-1986 (FEPA-F), the band that holds 80 % of the grain",
     "obchod.piskovacka.cz/rozmery-abraziv"},
    {"astm-e140",
     "ASTM E140, Table 1, non-austenitic steels, as reprinted on three pages",
     "mikipulley.co.jp, phase2plus.com, nhatvietindustry.com.vn"},
    {"hardness-scale", "foundry lexicon, scale of hardness", "giessereilexikon.com (Härteskala)"},
    {"page-hardfacing", "data page on hardfacing: carbides in iron", "hardfacingfty.com"},
    {"page-white-iron", "data page on white irons: their carbides", "steeltube.co"},
    {"carbide-review", "PMC8763544, Table 2 (rounded here)", "PMC8763544"},
    {"chromium-carbide-text",
     "encyclopaedia text on chromium carbide, which quotes another source",
     "an encyclopaedia, entry chromium carbide"},
    {"phases-memory", "handbooks on the wear of materials, recalled", ""},
    {"nitrides-memory", "hardness of nitrides, recalled; sources scatter widely", ""},
    {"abrasives-memory", "usual figures for abrasives, recalled", ""},
    {"fillers-memory", "usual figures for fillers, glass and fired clay, recalled", ""},
    {"gomes1995",
     "Gomes, Wronski and Wright 1995, on high-speed steels made from powder, abstract",
     "docs/sources.bib: gomes1995"},
    {"toughness-memory", "fracture toughness of hardened tool steels, recalled", ""},
    {"plausible", "no source: chosen by us inside what is plausible", ""},
    {"practice", "no source: chosen so that a model gives what practice reports", ""},
    {"two-body-memory", "wear coefficients of two-body abrasion in textbooks, recalled", ""},
    {"own-count", "your own count of passes, with the bevel measured before and after", ""},
    {"own-file", "a file of your own, as it says there", ""},
});

}  // namespace

std::string_view in_words(TrustMark mark) {
  switch (mark) {
    case TrustMark::seen:
      return "seen";
    case TrustMark::seen_second_hand:
      return "second hand";
    case TrustMark::from_memory:
      return "memory";
    case TrustMark::derived:
      return "derived";
    case TrustMark::guessed:
      return "guess";
    case TrustMark::tuned:
      return "tuned";
    case TrustMark::declared:
      return "declared";
  }
  return "";
}

std::span<const Source> known_sources() { return kSources; }

const Source* find_source(std::string_view key) {
  const auto found = std::ranges::find(kSources, key, &Source::key);
  return found == kSources.end() ? nullptr : &*found;
}

}  // namespace keenfall::materials
