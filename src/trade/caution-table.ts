// The usual cautions: facts, never fault, dated and sourced; nothing here blocks a job. Stone by stone and step by step they are in stone-care.ts.
// Not legal advice. Status says how the source was read; what is from memory or common practice says so.

type Jurisdiction = 'anywhere' | 'UK' | 'US' | 'EU/UK' | 'US, varies';
export interface Caution {
  readonly jurisdiction: Jurisdiction;
  /** When a screen shows it; where it says once, the answer is kept and the caution is not shown again. */
  readonly showWhen: string;
  readonly text: string;
  readonly source: string;
  readonly status: string;
}

/** The end of every caution that concerns someone's safety. */
export const USUAL_CAUTION = 'Usual caution: follow the safety data sheet, local code and a licensed practitioner.';

/** All cautions by their stable id, as read up to 2026; jurisdictions not named are "ask locally". */
export const CAUTIONS = {
  'hallmark-addition': {
    jurisdiction: 'UK',
    showWhen:
      "the ledger's own weights say that metal added to a hallmarked piece comes within a tenth of the gate or passes it, or the metal, standard or character changes; not for a sizing or re-tip well inside it, and not where a consent on file answers",
    text: "Adding to a hallmarked article that is not new stays outside the offence only if the metal is the same, not below the article's standard, the character and use are unchanged, and the addition is no more than the lesser of 1 g gold, 5 g silver or 0.5 g platinum and half the weight before. Beyond that, and for alterations and repairs that add nothing, the Act asks for an assay office's written consent, for one piece or in general.",
    source: 'Hallmarking Act 1973 s5(1),(4), text as at 6 April 2007 (source HA5); the nearness of a tenth is ours',
    status: 'read (2007 text); check current',
  },
  'hallmark-deface': {
    jurisdiction: 'UK',
    showWhen: 'cut or file at a mark',
    text: 'Removing, altering or defacing a struck mark needs assay office consent; reducing an article to scrap is excepted.',
    source: 'Hallmarking Act 1973 s5(2),(3)',
    status: 'read (2007 text)',
  },
  'hallmark-coating': {
    jurisdiction: 'UK',
    showWhen:
      'a coat over 2 micrometres, or of a metal other than gold or silver on a hallmarked piece, and the shop has no consent on file for it; asked once, then silent',
    text: "The text read lets through coats up to 2 micrometres of gold on gold, silver on silver and gold on silver, each not below the standard. Anything else is an alteration that needs an assay office's consent, for the piece or in general.",
    source: 'Hallmarking Act 1973 s5(5), text as at 6 April 2007 (HA5)',
    status: 'read (2007 text); check current',
  },
  'us-stamp': {
    jurisdiction: 'US',
    showWhen: 'new quality mark struck or piece re-marked',
    text: 'Marked gold may fall short of the mark by at most 3 parts per thousand, or 7 for the whole piece including solder; a quality mark must be accompanied by a registered mark.',
    source: '15 USC 295, 297; MJSA marking page',
    status: 'note and summary read',
  },
  'mark-is-not-an-assay': {
    jurisdiction: 'anywhere',
    showWhen: 'a fineness is taken from a mark alone for a credit, a lot or added metal',
    text: 'A mark tells what was struck. Old platinum bears no fixed fineness, US pieces from before 1981 may lie up to a karat lower overall, and solder and repairs lower the whole. Keep the mark and the assumed fineness apart; test before money depends on it.',
    source: 'topdogscrapgold (TDS) for platinum before 1975; 15 USC 295 notes (USC295)',
    status: 'read',
  },
  'plated-not-solid': {
    jurisdiction: 'anywhere',
    showWhen:
      'the mark read is a plating mark (GF, RGP, HGE, GP, EPNS and the like) and the piece is entered or credited as gold or silver',
    text: "The karat is the layer's, not the piece's. Enter it as plated, leave it out of gold and silver lots, and do not hard-solder it without telling the customer that the layer burns.",
    source: 'gold-filled and rolled-plate shares and marks: GFX, MIM, EBG, BRN; soldering remark: common practice, no source',
    status: 'read (part common practice)',
  },
  'us-claims': {
    jurisdiction: 'US',
    showWhen: 'describing metal or stones to a customer',
    text: 'FTC Jewelry Guides 16 CFR 23 treat unqualified or inaccurate descriptions as deceptive.',
    source: '83 FR 40665 (2018)',
    status: 'summary read',
  },
  'lab-grown-told': {
    jurisdiction: 'anywhere',
    showWhen: 'a stone is supplied by the shop',
    text: 'Say whether it is natural, lab-grown or treated, and when the customer was told. Small stones by the parcel are where it goes wrong.',
    source: 'US: FTC Jewelry Guides 16 CFR 23 (83 FR 40665); otherwise common practice, no source',
    status: 'summary read (US); common practice',
  },
  lead: {
    jurisdiction: 'EU/UK',
    showWhen: 'solder or part entered with unknown composition',
    text: 'Individual jewellery parts must be below 0.05 % lead by weight, with exemptions.',
    source: 'REACH Annex XVII entry 63',
    status: 'read (secondary)',
  },
  cadmium: {
    jurisdiction: 'EU/UK',
    showWhen: 'cadmium solder selected',
    text: 'Metal parts must be below 0.01 % cadmium; cadmium solder fume is a serious health hazard.',
    source: 'REACH Annex XVII entry 23; ECHA Q&A 158; fume remark from memory',
    status: 'read (part memory)',
  },
  'old-solder': {
    jurisdiction: 'anywhere',
    showWhen: 'heat planned on a piece with old repairs, grey joints or unknown solder',
    text: `Old joints may hold lead or cadmium. Lead eats into gold, silver and platinum when heated: scrape it off cold before any flame, and let weights tell what was taken away. Cadmium fume is dangerous and has no smell to warn: extraction, or do not heat. ${USUAL_CAUTION}`,
    source: 'cadmium: HSE EIS31 (EIS31); lead and smell: common practice, no source',
    status: 'read (part common practice)',
  },
  'fire-coat': {
    jurisdiction: 'anywhere',
    showWhen: 'boric acid in alcohol used before heat',
    text: `The alcohol's vapour catches far from the dish and its flame is hardly seen in daylight; boric acid is listed as harmful to reproduction. Lid on, flame away, air. No coat on ruby, sapphire or amber. ${USUAL_CAUTION}`,
    source:
      'NIOSH Pocket Guide ethyl alcohol (NPG); Orchid 4011 (ORF); SUBSPORTplus 442 (SUBS); Orchid 36223 (ORH) for corundum; NGJ for amber',
    status: 'read',
  },
  'cyanide-and-acid': {
    jurisdiction: 'anywhere',
    showWhen: 'a piece goes between pickle or acid dip and a cyanide bath, or such liquids are stored or shipped together',
    text: `Acid and cyanide together give off hydrogen cyanide. Never one after the other without a full rinse, never one sink, shelf, extractor or drum. ${USUAL_CAUTION}`,
    source: 'CSB/SJU jewelry hazards (CSB); NLM Haz-Map (HAZ)',
    status: 'read',
  },
  'pickle-quench': {
    jurisdiction: 'anywhere',
    showWhen: 'pickle follows heat with stones in, or binding wire or steel tweezers are on',
    text: 'Let it cool in air first: a hot piece quenched cracks stones and spits acid. Steel in pickle lays copper on the piece.',
    source: 'hamidbros workshop warnings (HAM), Orchid 36223 and 42796 (ORH); steel remark: common practice, no source',
    status: 'read (part common practice)',
  },
  'laser-stones': {
    jurisdiction: 'anywhere',
    showWhen: 'laser planned within sight of a stone',
    text: `Cover stones with tape or putty and look at what lies behind the spot. A miss has cratered sapphire through, and an impurity in a diamond may burst, about one in a hundred. The eye shutter is not a matter of taste. ${USUAL_CAUTION}`,
    source: 'JBL, GAL, PJ02; eye remark: common practice, no source',
    status: 'read (part common practice)',
  },
  dust: {
    jurisdiction: 'anywhere',
    showWhen: 'polishing, emery or sweeps handled, burnt or sieved',
    text: `Dust carries metal, abrasive and old solder. Extraction on, mask for sieving, no food at the skin; burn outdoors or under a hood. ${USUAL_CAUTION}`,
    source: 'NLM Haz-Map, jewelry making (HAZ); details: common practice, no source',
    status: 'read (part common practice)',
  },
  'hollow-and-heat': {
    jurisdiction: 'anywhere',
    showWhen: 'flame on a hollow, sealed or filled piece',
    text: 'Shut-in air or water can burst it, wax or pitch inside runs out, and pickle stays inside and weeps. Open a vent, or choose laser, and tell the customer.',
    source: 'common practice, no source',
    status: 'common practice',
  },
  nickel: {
    jurisdiction: 'EU/UK',
    showWhen: 'skin-contact part added',
    text: 'Nickel release limits apply to parts in prolonged skin contact and piercing posts.',
    source: 'REACH Annex XVII entry 27',
    status: 'memory',
  },
  buyin: {
    jurisdiction: 'anywhere',
    showWhen: 'metal or piece bought from the public (not repaired)',
    text: 'Buying second-hand precious metal usually needs a licence, seller identity, a description with photo, a report to police and a holding period during which it may not be melted or altered. Periods differ from town to town. Check the local code before melting.',
    source:
      'DC 16-1002 (30 days), Louisville (12 days), Jacksonville 185.404 (report in 24 h, keep 3 years), Loudoun ch.830 (24 months), Maryland Bus. Reg. 12-302',
    status: 'read',
  },
  'scrap-dealer': {
    jurisdiction: 'UK',
    showWhen: 'scrap bought or sold as a business',
    text: 'Records and a licence may be asked under the Scrap Metal Dealers Act 2013; whether a jeweller is caught is a question for the council or a lawyer.',
    source: 'southribble.gov.uk, leeds.gov.uk guidance',
    status: 'read; precious-metal exclusion from memory',
  },
  aml: {
    jurisdiction: 'US',
    showWhen: 'public purchases above threshold',
    text: 'A retailer who buys more than 50,000 dollars of covered goods a year from the public becomes a dealer that must run an anti-money-laundering programme.',
    source: '31 CFR 1027.100, .210',
    status: 'read',
  },
  'aml-cash': {
    jurisdiction: 'EU/UK',
    showWhen: 'large cash payment',
    text: 'Cash limits and customer checks apply to high-value dealers.',
    source: 'EU AML rules',
    status: 'memory',
  },
  uncollected: {
    jurisdiction: 'UK',
    showWhen: 'finished work not collected',
    text: "A bailee may sell only after notice in the form of Schedule 1 and must account for the proceeds less costs; at least three months' notice where money is owed.",
    source: 'Torts (Interference with Goods) Act 1977 s12, Sch 1',
    status: 'read (s12), secondary for three months',
  },
  'uncollected-us': {
    jurisdiction: 'US',
    showWhen: 'finished work not collected',
    text: "State lien and abandoned-property laws differ: Georgia one year plus 30 days' notice; Connecticut six months plus 30 days, with a value test. A ticket clause alone may not be enough.",
    source: 'OCGA 44-14-430/431; Conn. Gen. Stat. 49-60',
    status: 'read',
  },
  bailee: {
    jurisdiction: 'anywhere',
    showWhen: 'take-in of a high-value piece',
    text: 'The shop holds the piece as bailee for reward and owes ordinary care; it is not automatically an insurer, but must be able to show the care taken, including with sub-contractors.',
    source: 'McKissick v. R. Connelly Jewelers, 41 N.C. App. 152 (1979); Travelers Fire v. Brock (Cal. App. 1938)',
    status: 'read (headnotes)',
  },
  'refiner-title': {
    jurisdiction: 'anywhere',
    showWhen: 'scrap lot shipped',
    text: "Some refiners' terms turn the delivery into a sale, not a bailment: do not ship customer-owned metal without the customer's written consent.",
    source: 'unitedpmr.com standard refining conditions 1.2',
    status: 'read',
  },
  'hazwaste-us': {
    jurisdiction: 'US',
    showWhen: 'plating solution, sludge or sweeps shipped',
    text: 'Waste with economically significant precious metal may follow the lighter 40 CFR 266 subpart F route: notification, manifest, and records showing no speculative accumulation (75 % a year). State law may be stricter.',
    source: '40 CFR 266.70 summaries (lion.com, danielstraining.com)',
    status: 'read (secondary)',
  },
  'hazwaste-uk': {
    jurisdiction: 'EU/UK',
    showWhen: 'plating solution or sludge shipped',
    text: 'Duty of care, transfer or consignment notes for hazardous waste; cyanide baths never to acid.',
    source: 'Environmental Protection Act 1990 s34, Hazardous Waste Regs',
    status: 'memory',
  },
  'insurance-limits': {
    jurisdiction: 'anywhere',
    showWhen: 'value at a place passes a policy limit',
    text: 'Policies set separate limits for safe, out of safe when closed, window, transit, entrusted to others, per item. Unexplained loss and stock-take shortage are commonly excluded.',
    source: 'roughnotes/ISO forms summaries; docplayer 16614879; armitageinc glossary; 43 Am Jur 2d Insurance 521',
    status: 'read',
  },
  'gdpr-erasure': {
    jurisdiction: 'EU/UK',
    showWhen: 'customer asks for erasure',
    text: 'Erasure is not absolute: data needed for a legal duty or legal claims may stay, but only as long as needed. Answer within one month.',
    source: 'UK GDPR Art 17 (ICO guide)',
    status: 'read',
  },
  'gdpr-keys': {
    jurisdiction: 'EU/UK',
    showWhen: 'key destroyed for a customer',
    text: 'Regulators describe destroying the key as close in effect to deletion, not as deletion itself. Keep ordinary deletion for what can be deleted and record the decision.',
    source: 'CNIL 2018 (secondary), EDPB Guidelines 02/2025 (secondary), ICO "beyond use"',
    status: 'read (secondary)',
  },
  photos: {
    jurisdiction: 'anywhere',
    showWhen: 'photo of a person or document taken',
    text: 'A photo of an identity document or an engraved name is personal data; collect only where the buying law demands it.',
    source: 'GDPR Art 5(1)(c)',
    status: 'memory',
  },
  'weights-trade': {
    jurisdiction: 'anywhere',
    showWhen: "a weight is used to buy, credit or charge by the gram, and the balance's verification is missing or out of date",
    text: 'Where the weight fixes a price, as in buying in or crediting metal, the balance must be verified for trade (class II is the usual class for precious metal and gems). A balance good enough for the bench is not enough.',
    source: 'NIST HB44 2.20; Directive 2014/31/EU Annex I; mn.gov page',
    status: 'read',
  },
  'origin-claim': {
    jurisdiction: 'anywhere',
    showWhen: "claim that only the customer's own gold was used",
    text: 'True only while the metal was kept apart all the way (identity preserved). If it was cast with other metal or new solder was added, say so.',
    source: 'ISO 22095:2020 3.3.1-3.3.4',
    status: 'read (definitions)',
  },
  'plating-bath-stones': {
    jurisdiction: 'anywhere',
    showWhen: 'plating planned with soft, porous, oiled, filled, glued or organic stones set',
    text: 'Electrocleaning, acid dip and bath can ruin opal, pearl, turquoise, coral, emerald and other porous or treated stones; for pearls even the fumes are blamed. Plate first and set after, or mask and ask. Clean behind clear stones, or dark rhodium shows through.',
    source: 'pearls: ORPM, and milder ORPG; behind stones: ORRD; other stones: common practice, no source.',
    status: 'read (part common practice)',
  },
  'unknown-foiled': {
    jurisdiction: 'anywhere',
    showWhen:
      'heat, ultrasonic, steam, pickle or bath planned on closed-back, foiled or cemented settings, or on a stone nobody has named behind a closed back',
    text: 'Water behind the stone darkens and flakes the foil; foil, pitch and cement fail with heat; and taking such a stone out can destroy it. No heat, no water, or decline. Laser only well away and covered, and not where the stone is unknown.',
    source: 'water: ARB, NBL, STS; heat: common practice, no source',
    status: 'read (part common practice)',
  },
  'unknown-stone-heat': {
    jurisdiction: 'anywhere',
    showWhen: "heat planned and a stone's kind or treatment has not been looked at",
    text: 'Look under 10x for filling, glue lines and coats, which takes less time than a new stone. Still unknown means take it out.',
    source: 'HAM (check for glass filling before heat), ORH, ORH09',
    status: 'read',
  },
  'metal-contamination': {
    jurisdiction: 'anywhere',
    showWhen: 'platinum, palladium, iron, lead or tin entered for a skin, a filings jar or a lot of another family, or the reverse',
    text: 'Platinum in gold filings costs a separate assay and may be paid as nothing; gold solder or carbon spoils platinum; iron and lead spoil a pour. Keep files, wheels, crucibles and skins apart, draw a magnet through lemel, and take soft-soldered parts out before the pot. It is a warning, not a bar: say mixed and go on.',
    source: 'common practice, no source',
    status: 'common practice',
  },
  'contents-unopened': {
    jurisdiction: 'anywhere',
    showWhen: 'locket, urn ring, mourning piece or hollow piece with contents',
    text: "Hair, ashes, a photograph or a painted miniature may be inside. Do not open, heat, immerse or steam without the customer's written consent. Miniatures and hair under glass go to a conservator.",
    source: 'miniatures and hair: Conservation DistList 15:46 (CDL), Conservation Register (CRG); consent: common practice, no source',
    status: 'read (part common practice)',
  },
  ashes: {
    jurisdiction: 'anywhere',
    showWhen: 'ashes are in or come with the piece',
    text: 'Ashes cannot be replaced. Weigh nothing out, spill nothing, use no water: such pieces are never fully watertight. Decline heat, and hand over only to the person named.',
    source: 'eng.legend-store.com (LSA) for water; the rest: common practice, no source',
    status: 'read (part common practice)',
  },
  'protected-material': {
    jurisdiction: 'anywhere',
    showWhen: 'ivory, tortoiseshell or coral to be posted abroad, sold or replaced',
    text: "Ivory, tortoiseshell and coral may be protected: giving a customer's own piece back is one thing, selling it or sending it over a border another. Ask before it is posted.",
    source: 'coral: Emery part 4 (EMR4); ivory and tortoiseshell: memory',
    status: 'read (part memory); ask locally',
  },
  'stone-may-change': {
    jurisdiction: 'anywhere',
    showWhen: 'a stone weighs otherwise at hand-back and no entry says why',
    text: 'A recut, a chip, a repolish, glue, wax or dirt gone, oil out of an emerald, water in or out of opal, turquoise or pearl change a weight honestly. Each has its entry; make it before the customer reads the number.',
    source: 'common practice, no source',
    status: 'common practice',
  },
  'wet-or-hollow': {
    jurisdiction: 'anywhere',
    showWhen: 'weighing after cleaning, pickle or steam, or of a hollow, strung or porous piece',
    text: "Water in a hollow bangle or under a setting weighs grams, and soap under a head weighs hundredths. Clean, dry and cool it, then take the base weight. Hot pieces drift on the pan. Strung pearls dry a day. Say 'not sure it is dry' rather than guess.",
    source: 'common practice, no source',
    status: 'common practice',
  },
  'plating-and-weight': {
    jurisdiction: 'anywhere',
    showWhen: 'finished weight is below the base weight on a plating job',
    text: 'Polishing before the bath takes off more than rhodium puts on: a few hundredths down is ordinary and is dust and filings, not a fault.',
    source: 'rhodium of half a micrometre on a wide band is about 4 mg (computed); the rest: common practice, no source',
    status: 'derived (part common practice)',
  },
  'credit-as-purchase': {
    jurisdiction: 'US, varies',
    showWhen: 'credit or exchange given for metal cut away or brought in',
    text: 'Some local codes count trading for used metal as buying it, with identity, report and a hold during which it may not be melted or mixed. Ask locally, record the answer, and keep the piece as received and out of any lot until the hold ends.',
    source:
      'McCracken County KY (MCK), Dallas NC 112.02 (DNC), Everett WA (EVW): purchasing, trading for or otherwise acquiring; the hold as in buyin',
    status: 'read; check current',
  },
  'bought-in-metal-in-heirloom': {
    jurisdiction: 'anywhere',
    showWhen: "bought-in second-hand metal chosen as added metal for a customer's piece",
    text: 'Metal bought in is used only when its hold has ended, it has been tested, is free of solder, and the customer has agreed to second-hand metal. The usual way is the refiner first, then stock.',
    source: 'common practice, no source',
    status: 'common practice',
  },
  'own-gold-recast': {
    jurisdiction: 'anywhere',
    showWhen: "the customer's own gold is to be melted for the new piece",
    text: 'Old solder, mixed alloys and plating make it brittle or short of standard. Test first, say what new metal goes in, and say afterwards that it was cast with other metal if it was.',
    source: 'ISO 22095:2020 for the claim (origin-claim); the rest: common practice, no source',
    status: 'common practice',
  },
  'tell-insurer-first': {
    jurisdiction: 'anywhere',
    showWhen: 'a letter that says weights, counts or stones do not agree, or an entry of damage or loss, is about to leave the shop',
    text: 'Liability covers commonly ask to be told promptly and forbid admitting liability or making an offer. Tell your insurer first. State facts and times, never fault. The prompt does not stop the letter.',
    source: "general insurance glossaries and claim notes (WNC, IFS, MSC); no jeweller's policy was read for this clause",
    status: 'read (general); check your policy',
  },
  'valuation-stale': {
    jurisdiction: 'anywhere',
    showWhen: 'a remount, a stone changed or recut, or the metal changed, at hand-back',
    text: 'The old valuation and the insurance schedule describe a piece that no longer exists. Say so in the record letter.',
    source: 'common practice, no source',
    status: 'common practice',
  },
  'posting-cover': {
    jurisdiction: 'anywhere',
    showWhen: 'a piece is posted or couriered',
    text: "Carriers often cap or leave out jewellery, whatever is written on the label. Record the customer's written instruction, the service, the cover bought and the stated value, and photograph the packing. It is returned when delivery is confirmed, not when it is posted.",
    source: 'common practice, no source',
    status: 'common practice',
  },
  'mark-in-cut': {
    jurisdiction: 'anywhere',
    showWhen: 'a mark or an inscription lies in the part to be cut or filed',
    text: "The mark or the inscription would go with the metal. Read it, photograph it, and have the customer's consent on the agreement. In the UK removing or defacing a struck mark also needs an assay office's written consent.",
    source: "customer's consent: common practice, no source; UK: Hallmarking Act 1973 s5(2) (HA5)",
    status: 'read for the UK (2007 text); otherwise common practice',
  },
  'everyday-plating': {
    jurisdiction: 'UK',
    showWhen: 'first rhodium or flash plating on a marked piece in this shop, once; never again after the answer is on file',
    text: 'Rhodium on white gold is daily work, yet it is not among the coats named in the text read. The assay offices publish general consents, one of them for coating hallmarked silver. Ask your assay office once what covers your work, put the answer on file as a consent, and this is not shown again. It never holds a job up.',
    source: 'Hallmarking Act 1973 s5(5) (HA5); gov.uk Assay Offices: consents (AOC); whether rhodium on gold is covered was not read',
    status: 'check current',
  },
} as const satisfies Readonly<Record<string, Caution>>;
export type CautionId = keyof typeof CAUTIONS;
