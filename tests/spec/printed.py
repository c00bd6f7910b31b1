"""Clinical numbers as their sources print them, the source beside each."""

# key: value, as read in public text
READ = {
    "normal.overbite.least": 2,  # Nanda: ideal 2 to 4 mm, or 5 to 25 %; acceptable to 40
    "normal.overbite.most": 4,
    "normal.overbite-percent.least": 5,
    "normal.overbite-percent.most": 25,
    "normal.overbite-percent.acceptable": 40,
    "normal.overbite-percent.ghafari.least": 30,  # Ghafari 2013
    "normal.overbite-percent.ghafari.most": 40,
    "normal.overbite.severe": 5,  # El-Dawlatly 2012
    "normal.overbite.lay.least": 2,  # Parrini 2016: overbite 2 to 5, gum 1.5 to 4, midline 0 to 3
    "normal.overbite.lay.most": 5,
    "normal.gingival-display-on-smiling.lay.least": 1.5,
    "normal.gingival-display-on-smiling.lay.most": 4,
    "normal.midline.parrini": 3,
    "normal.midline": 2,  # Johnston 1999: 56 % at 2 mm
    "normal.midline-seen": 56,
    "normal.overjet.injury": 3,  # reviews quoted in an article on overjet
    "normal.overjet-injured.at-five": 22,
    "normal.overjet-injured.at-nine": 24,
    "normal.overjet-injured.above-nine": 44,
    "normal.gingival-display-on-smiling.female.least": 1,  # Sabri 2005
    "normal.gingival-display-on-smiling.female.most": 2,
    "normal.gingival-display-on-smiling.female-above-male": 1.5,  # Peck 1992
    "normal.gingival-display-on-smiling.excess": 3,  # Kokich 2006
    "normal.gingival-display-on-smiling.excess.mahn": 4,  # Mahn and Reangber 2022
    "normal.smile-line.least": 75,  # Tjan 1984
    "normal.smile-line.most": 100,
    "normal.incisor-display-at-rest.da-motta.female.youngest": 4.45,  # da Motta 2010
    "normal.incisor-display-at-rest.da-motta.female.oldest": 1.32,
    "normal.incisor-display-at-rest.da-motta.male.youngest": 3.35,
    "normal.incisor-display-at-rest.da-motta.male.oldest": 0.57,
    "normal.curve-of-spee.most": 1.5,  # Andrews 1972
    "normal.upper-inter-canine-width.bishara": 33.7,  # Bishara 1997: men of 45
    "normal.sna-angle.steiner": 82,  # Steiner 1953
    "normal.sna-angle.downs": 81,  # Downs, in a review of norms
    "normal.snb-angle.downs": 78,
    "normal.lower-incisor-to-mandibular-plane.downs": 90 + 1.4,  # Downs 1948
    "normal.torque-below-inclination": 16.2,  # Knosel 2007
    "normal.proximal-enamel.incisors": 0.63,  # Sarig 2015
    "normal.proximal-enamel.first-molars": 1.48,
    "normal.proximal-enamel-in-all.upper": 26.86,
    "normal.proximal-enamel-in-all.lower": 24.52,
    "achieved.all": 73.6,  # Lombardo 2017
    "achieved.tip.all": 82.5,
    "achieved.tip.best.least": 93,
    "achieved.tip.best.most": 97,
    "achieved.torque.all": 72.9,
    "achieved.rotation.all": 66.8,
    "achieved.rotation.lower-canine": 54.2,
    "achieved.rotation.upper-canine": 47.9,  # Koletsi 2021
    "achieved.rotation.lower-incisors": 70.7,
    "achieved.rotation.review.least": 37,  # Blouza 2025
    "achieved.rotation.review.most": 60,
    "achieved.extrusion.incisors": 30,  # Rossini 2015
    "achieved.intrusion-mm": 0.72,
    "achieved.molar-distal.rossini": 88,
    "achieved.irregularity-fall.upper": 4,
    "achieved.irregularity-fall.lower": 5,
    "achieved.transverse": 45,  # Sahim and El Quars 2021
    "achieved.transverse.mixed-dentition.cusp": 87.7,  # Korean J Orthod 2025;55:85
    "achieved.transverse.mixed-dentition.gum": 82.7,
    "achieved.molar-distal": 61.1,  # Angle Orthod 2025, a review
    "achieved.molar-mesial": 85.6,
    "achieved.distal-by-effect.intrusion.least": 0.47,  # Prog Orthod 2023
    "achieved.distal-by-effect.intrusion.most": 0.58,
    "achieved.distal-by-effect.tip": 5,
    "achieved.extraction-by-effect.molar-mesial": 2.2,  # Prog Orthod 2022
    "achieved.extraction-by-effect.molar-tip": 5.4,
    "achieved.extraction-by-effect.canine-tip": 11,
    "achieved.extraction-by-effect.incisor-torque": 10.6,
    "achieved.extraction-by-effect.incisor-extrusion": 1.5,
    "achieved.anchorage-loss.first-premolar": 25,  # Angle Orthod 2023;93:375
    "achieved.anchorage-loss.second-premolar": 40,
    "achieved.reduction.upper": 45,  # De Felice 2020
    "achieved.reduction.lower": 37,
    "achieved.reduction-short.upper": 0.55,
    "achieved.reduction-short.lower": 0.82,
    "achieved.relevant-error.mm": 0.5,  # Al-Nadawi 2021
    "achieved.relevant-error.deg": 2,
    "step.wear-interval.least": 7,
    "step.wear-interval.most": 14,
    "step.wear-hours.most": 22,  # NCT06253286
    "caution.lower-incisor-to-mandibular-plane.warn": 99,  # American Board of Orthodontics
    "normal.sella-nasion-to-mandibular-plane.least": 26,
    "normal.sella-nasion-to-mandibular-plane.most": 38,
    "caution.reduction-per-surface.strictest": 0.2,  # Gonzalez-Garcia 2025
    "mouth.resorption.mean": 2.5,  # chapter of 2015
    "mouth.resorption.severe": 4,
    "mouth.resorption.pause": 3,  # Bai 2022
}

# key: value and grade, as the literature is recalled
RECALLED = {
    "normal.overbite-percent.uk.least": (33, "A"),  # British Standards Institute 1983: a third to a half
    "normal.overbite-percent.uk.most": (50, "A"),
    "normal.overjet.least": (2, "A"),  # Mitchell
    "normal.overjet.most": (4, "A"),
    "normal.overbite.us-survey.severe.least": (5, "B"),  # Proffit: 5 to 7
    "normal.overjet.us-survey.ideal.most": (2, "B"),  # Proffit: 1 to 2
    "normal.interincisal.steiner": (131, "A"),  # Steiner 1953
    "normal.anb-angle.steiner": (2, "A"),
    "normal.snb-angle.steiner": (80, "A"),
    "normal.interincisal.downs": (135.4, "A"),  # Downs 1948: SD 5.8, 130 to 150.5
    "normal.interincisal.ricketts": (130, "B"),
    "normal.interincisal.eastman": (135, "A"),  # Mills 1970
    "normal.interincisal.eastman-older": (133, "A"),
    "normal.upper-incisor-to-palatal-plane.eastman": (109, "A"),
    "normal.lower-incisor-to-mandibular-plane.eastman": (93, "A"),
    "normal.palatal-to-mandibular-plane.eastman": (27, "A"),
    "normal.lower-face-height.eastman": (55, "A"),
    "normal.upper-incisor-to-sella-nasion.riedel": (103, "A"),  # Riedel 1952: 103 to 104
    "normal.lower-incisor-to-mandibular-plane.tweed": (90, "A"),  # Tweed 1954
    "normal.mandibular-plane-angle.tweed": (25, "A"),
    "normal.interincisal.southern-chinese": (120, "C"),  # Cooke and Wei
    "normal.upper-incisor-to-palatal-plane.southern-chinese": (118, "C"),
    "normal.lower-incisor-to-mandibular-plane.southern-chinese": (97, "C"),
    "normal.incisor-display-at-rest.by-age.under-thirty": (3.37, "A"),  # Vig and Brundo 1978
    "normal.incisor-display-at-rest.by-age.thirties": (1.58, "A"),
    "normal.incisor-display-at-rest.by-age.forties": (0.95, "A"),
    "normal.incisor-display-at-rest.by-age.fifties": (0.46, "A"),
    "normal.incisor-display-at-rest.by-age.sixty-on": (-0.04, "A"),
    "normal.incisor-display-at-rest.by-sex.female": (3.40, "A"),
    "normal.incisor-display-at-rest.by-sex.male": (1.91, "A"),
    "normal.lip-growth-end.female": (14, "B"),  # Vig and Cohen 1979
    "normal.lip-growth-end.male": (18, "B"),
    "normal.gingival-display-on-smiling.excess.peck": (2, "B"),  # Peck 1992
    "normal.gingival-display-on-smiling.excess.kokich-orthodontists": (2, "A"),  # Kokich 1999
    "normal.gingival-display-on-smiling.excess.kokich-laypeople": (4, "A"),
    "normal.midline.beyer": (2.2, "A"),  # Beyer and Lindauer 1998
    "normal.midline.kokich": (4, "A"),  # Kokich 1999
    "caution.lower-incisor-to-mandibular-plane.ask": (95, "B"),  # Yared 2006
    "caution.thin-gingiva.margin": (0.5, "B"),
    "caution.advance-angle.lower-incisors": (3, "B"),  # Proffit
    "caution.reduction-share": (50, "A"),  # Sheridan
    "step.per-month": (1, "A"),  # Proffit
    "mouth.pocket-depth.bleeding": (5, "B"),  # Herrera 2022
    "mouth.pocket-depth.any": (6, "B"),
    "mouth.short-root.image-after.least": (6, "A"),  # Levander and Malmgren 1988
    "mouth.wait.minor-injury": (3, "B"),  # Kindelan 2008
    "mouth.wait.severe-injury.least": (6, "B"),
    "mouth.wait.severe-injury.most": (12, "B"),
    "mouth.wait.root-fracture": (12, "B"),
    "mouth.wait.regenerative-surgery": (1, "B"),  # Jepsen 2021: 4 weeks
}

UPPER = ("11", "12", "13", "14", "15", "16", "17")
LOWER = ("41", "42", "43", "44", "45", "46", "47")
CROWNS = {
    ("crown-tip", UPPER): (5, 9, 11, 2, 2, 5, 5),  # Andrews
    ("crown-tip", LOWER): (2, 2, 5, 2, 2, 2, 2),
    ("crown-torque", UPPER): (7, 3, -7, -7, -7, -9, -9),
    ("crown-torque", LOWER): (-1, -1, -11, -17, -22, -30, -35),
    ("crown-tip-northern-thai", UPPER): (3.5, 4.8, 2.5, -1.3, -0.2, -2.2, -7.5),  # Chiang Mai Dent J
    ("crown-tip-northern-thai", LOWER): (-0.2, -0.6, 0.0, 0.9, 3.6, 5.6, 7.6),
    ("crown-torque-northern-thai", UPPER): (8.2, 6.3, -6.0, -8.0, -8.2, -9.5, -8.4),
    ("crown-torque-northern-thai", LOWER): (5.4, 2.3, -3.8, -13.2, -18.9, -25.2, -34.7),
}

# mean, spread and ends as printed; the end of a default is the mean less or plus one spread
ONE_SPREAD = {
    "normal.interincisal": (135, 10),  # Eastman
    "normal.upper-incisor-to-palatal-plane": (109, 6),
    "normal.lower-incisor-to-mandibular-plane": (93, 6),
    "normal.palatal-to-mandibular-plane": (27, 4),
    "normal.lower-face-height": (55, 2),
    "normal.mandibular-plane-angle": (25, 5),  # texts
}

# means of adults (Bishara 1997, Moyers 1976, recalled) and their spread
WIDTHS = {
    "upper-inter-canine-width": {"female": (32, 33, 2), "male": (34, 35, 2)},
    "lower-inter-canine-width": {"female": (24, 25, 2), "male": (25, 26, 2)},
    "upper-inter-first-molar-width": {"female": (50, 52, 3), "male": (53, 55, 3)},
    "lower-inter-first-molar-width": {"female": (44, 45, 3), "male": (46, 48, 3)},
}
