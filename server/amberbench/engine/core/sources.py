"""Where figures come from: citation key → title, edition, section, year.

Keys starting with "practice" or "assumed" have no publication behind them and say so.
"""

SOURCES = {
    "choi_okos_1986": "Choi & Okos, Effects of temperature and composition on the thermal properties of foods, "
    "in Food Engineering and Process Applications vol. 1, Elsevier 1986, pp. 93–101; as tabulated in ASHRAE "
    "Handbook—Refrigeration, Thermal Properties of Foods, tables 1 and 2",
    "usda_sr28": "USDA National Nutrient Database for Standard Reference, release 28, 2016",
    "beckett_2009": "Beckett (ed.), Industrial Chocolate Manufacture and Use, 4th ed. 2009, pp. 667–668",
    "mcadams": "McAdams horizontal-plate correlations as given by Incropera & DeWitt, Fundamentals of Heat and Mass "
    "Transfer",
    "cengel_air": "Çengel, Heat and Mass Transfer: A Practical Approach, air at 30, 45 and 60 °C as printed in the "
    "examples of chapter 9",
    "en_12524": "DIN EN 12524, Building materials, tabulated design values, as given in the VDI Heat Atlas",
    "incropera": "Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, transient conduction, table 5.1",
    "iec_60705": "IEC 60705, Household microwave ovens: methods for measuring performance, clause 8 (not checked)",
    "oven_tests": "Notes on oven tests that follow IEC 60705 and on common water tests: start delay of 2 to 3 s",
    "buffler_1993": "Buffler, Microwave Cooking and Processing, 1993 (not checked in the book, approximate)",
    "asme_1992": "J. Heat Transfer 114(2), 1992, p. 326: contact conductance of paper on metal",
    "nist_sp811": "NIST Special Publication 811, Guide for the Use of the SI, 2008, appendix B.8",
    "emissivity_manuals": "Handheld-thermometer manuals: emissivity 0.93 to 0.95 for food",
    "bar_densities": "Densities of chocolate bars weighed in water, 1230 to 1333 kg/m³, student project at a density "
    "laboratory, 2012; 1.3 g/cm³ also in Beckett (ed.) 1999 (quoted second-hand)",
    "wille_lutton_1966": "Wille & Lutton, Polymorphism of cocoa butter, J. Am. Oil Chem. Soc. 1966 (abstract read; "
    "melting points second-hand)",
    "wmo_magnus": "Magnus form with the constants of the World Meteorological Organization, 17.62 and 243.12 °C over "
    "water (quoted second-hand)",
    "berk": "Berk, Food Process Engineering and Technology, equations 1.13 and 1.15, table 1.4",
    "liu_2006": "Liu et al., a review of the glass transition, 2006: definition of a glass by its viscosity",
    "sucrose_glass": "Glass temperature of dry sucrose 62 °C (extract of Mouritsen; Roos not checked; Berk prints 52), "
    "and the weight 4.7 of water against it (Roos, not checked in a document)",
    "huppert_1982": "Huppert, The propagation of two-dimensional and axisymmetric viscous gravity currents, J. Fluid "
    "Mech. 121, 1982, p. 43 (abstract read; its powers worked out again from the balance of weight and friction)",
    "check_digits_gs1": "GS1, How to calculate a check digit manually; unit tests of the GS1 syntax dictionary, 2026",
    "fda_appendix_h": "FDA, A Food Labeling Guide, appendix H, October 2009, after 21 CFR 101.9(c)",
    "cfr_801_62": "21 CFR 801.62 (2025), the sister rule of 101.7, which was not at hand; NIST SP 1038, 4.4.1.2",
    "cfr_101_4": "21 CFR 101.4(a), as a public message board quotes it in full",
    "usc_321_qq": "21 USC 321(qq), United States Code of April 2023",
    "usc_343_w": "21 USC 343(w), United States Code of April 2023",
    "eu_1169_2011": "Regulation (EU) No 1169/2011, annex II as a French regulation copies it; Commission Notice 2017/C "
    "428/01",
    "eu_net_weight": "usda-eu.org, weight and volume indication, 2017: heights of directive 76/211/EEC",
    "handbook_133": "NIST Handbook 133, chapter 2: scale and two rows of table 2-5 seen, the other figures from memory",
    "uk_si_2006_659": "UK SI 2006/659 schedule 2, and the French order of 20 October 1978, articles 10 and 11",
    "iso_8601": "ISO 8601:2000(E), 5.2.2",
    "practice": "Common practice, no published source",
    "assumed": "Assumed by Amberbench, nobody's measurement: measure yours",
    "memory": "Not checked in a document",
}
