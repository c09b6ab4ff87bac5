// Where the facts of the trade were read: short ids used beside every figure, with title and address as found.
// 'how' says whether the source itself was read.
export const SOURCES = {
  '24C': { title: '24carat.co.uk density ranges by karat', url: 'http://24carat.co.uk/densityofgoldandothermetals.html', how: 'read' },
  '3DB': {
    title: 'octonus 3dbook page on mounted diamond weight (baguette 0.00915; correction up to 10 %)',
    url: 'http://3dbook.octonus.com/dataeng/crypted/6_01.htm',
    how: 'read',
  },
  AGLT: { title: 'aglthai.com carat weight page (0.478 -> 0.47, 0.479 -> 0.48)', url: 'http://aglthai.com/carat_weight.php', how: 'read' },
  AJI: {
    title: 'antique-jewelry-investor.com: French owl mark on gold of other or unknown origin; French gold never below 18 ct',
    url: 'https://www.antique-jewelry-investor.com/french-origin-comments.html',
    how: 'read',
  },
  AOC: {
    title:
      'gov.uk, "Assay Offices: consents", notice of the Joint Committee of Assay Offices: base-metal additions, non-metal additions, coating of a hallmarked silver article',
    url: 'https://www.gov.uk/government/publications/assay-offices-consents',
    how: 'read',
  },
  ARB: {
    title: 'antiqueringboutique.com, closed and foil-backed jewellery: water behind the stone darkens and flakes the foil',
    url: 'https://www.antiqueringboutique.com/pages/caring-for-closed-foil-back-jewllery',
    how: 'read',
  },
  ASC: {
    title: 'ascasonline.org / silvercollection.it, Russian silver: 96 zolotnik to the pound; 84 = 875, 88 = 916.6, 91 = 947.9',
    url: 'https://ascasonline.org/articolo7.html',
    how: 'read',
  },
  AUE: {
    title: 'AU Enterprises relative-weight table and wax example',
    url: 'https://www.auenterprises.com/customer-area/resources/standard-data/weights/',
    how: 'read',
  },
  BJW: {
    title: 'buyingaloosediamond 2008: wax on jadeite dulls in contact with heat',
    url: 'https://buyingaloosediamond.blogspot.com/2008/04/jadeite-jade-enhancement-treatment-how.html',
    how: 'read',
  },
  BNB: {
    title: 'barnebys: German silver, nickel silver, alpaca hold no silver; EPNS',
    url: 'https://www.barnebys.com/barnepedia/article/german-silver/',
    how: 'read',
  },
  BRN: {
    title: "blueridgenow.com 2011: 14KP solid; HEG, GF, RGP plated; 'warranted 25 years' on a watch case means gold filled",
    url: 'http://www.blueridgenow.com/news/20110414/collecting-or-selling-jewelry-know-what-to-look-for',
    how: 'read',
  },
  BST: {
    title: 'beerstein.net, European silver: loth in 16ths; Germany 800 with crescent and crown from 1888',
    url: 'http://www.beerstein.net/articles/bsj-2c.htm',
    how: 'read',
  },
  CART: {
    title: 'R. Cartier FGA, "Weighty Considerations" (CIBJO rounding: third decimal ignored unless 9)',
    url: 'http://www.appraisertech.com/richardcartierarticle.htm',
    how: 'read',
  },
  CAS: {
    title: 'cascosrl.it, care of cameos: shell cracks when dry, never soaked more than half a minute, harsh cleaners erode it',
    url: 'http://www.cascosrl.it/cameo_mainteinance.htm',
    how: 'read',
  },
  CCR: {
    title: 'calculator.city ring-blank example (48.63 / 16.98 / 53.34 / 320.06)',
    url: 'https://cal2.calculator.city/?p=19303',
    how: 'read',
  },
  CDL: {
    title: 'Conservation DistList 15:46 (2001), mourning lockets and ivory miniatures: leave to a conservator',
    url: 'https://cool.culturalheritage.org/byform/mailing-lists/cdl/2001/1546.html',
    how: 'read',
  },
  CHM: {
    title: 'charmantiques.net, French silver: old man 1819-1838, Minerva 1838-1973, crab, boar, weevil (import)',
    url: 'https://charmantiques.net/blogs/news/how-to-identify-french-sterling-silver',
    how: 'read',
  },
  CRB: {
    title:
      'craftbanter thread, bench answer of May 2004: keep the torch away from everything but diamond, sapphire and ruby; organics burn low',
    url: 'http://craftbanter.com/showpost.php?s=7ab306f9550e9274c250861aad3fd74a&p=122406&postcount=3',
    how: 'read',
  },
  CRD: {
    title: 'cecileraleydesigns blog 2010: a skilled setter hammer-sets emerald and sets tanzanite',
    url: 'http://cecileraleydesigns.blogspot.com/2010/10/stone-setting-pros-and-woes.html',
    how: 'read',
  },
  CRG: {
    title: 'Conservation Register, care of jewellery: hair, feather and early plastics are fragile; ivory, bone and pearl stain',
    url: 'http://www.conservationregister.com/PIcon-carejewellery.asp',
    how: 'read',
  },
  CSB: {
    title: 'CSB/SJU jewelry hazards table (cyanide + acid -> HCN)',
    url: 'https://www.csbsju.edu/environmental-health-safety/programs/studio-and-shop-safety/arts-theater/jewelry',
    how: 'read',
  },
  DER: { title: 'derived by arithmetic from the cited constants', url: '', how: 'read' },
  DG01: {
    title: 'India EXIM policy 1997-2001 para 8.28 wastage norms',
    url: 'http://eximkey.com/notification.php?Path=%2FSec%2FDGFT%2FHandBookofProcedures%2FHBVol1upto31032001%2F_8_28.htm&intId=27781',
    how: 'read',
  },
  DG24B: {
    title: 'DGFT Public Notice 30/2024-25 of 1 Nov 2024, para 4.59',
    url: 'https://taxguru.in/dgft/dgft-notifies-revised-wastage-limits-input-norms-jewelry-exports.html',
    how: 'read',
  },
  DG24T: {
    title: 'DGFT Trade Notice 15/2024-25 of 28 Aug 2024, annexure (existing vs proposed norms)',
    url: 'http://salestaxindia.com/DEMO/TreeMenu.aspx?node=231858',
    how: 'read',
  },
  DG25: {
    title: 'DGFT amendment of Feb 2025 to para 4.59 (as summarised)',
    url: 'https://www.taxtmi.com/tmi_blog_details?id=796091',
    how: 'read',
  },
  DNC: {
    title: 'Dallas, North Carolina 112.02: purchasing, trading for or otherwise acquiring',
    url: 'https://codelibrary.amlegal.com/codes/dallasnc/latest/dallas_nc/0-0-0-3138',
    how: 'read',
  },
  DOR: {
    title: 'doralia.com care page (lists amethyst and others as safe under a torch)',
    url: 'https://www.doralia.com/gemstone-care-cleaning.html',
    how: 'read',
  },
  DRG: {
    title: 'dragomet.com on 56 gold and Soviet 583: 96ths until 1927, then thousandths',
    url: 'https://dragomet.com/en/zoloto/proby-zolota/56-proba-zolota-sostav-svojstva-tsarskogo-zolota-starinnoe-klejmo-s-bukvami-ego-stoimost-segodnya-sootvetstvie-sovremennym-probam-i-karatam/',
    how: 'read',
  },
  DSV: {
    title: 'diamondsourceva: laser drilling alone is stable to cleaning and repair heat, the filler is not',
    url: 'https://diamondsourceva.com/?p=14791',
    how: 'read',
  },
  DTB: {
    title: 'davidtaylor.com.au blog: double ring 16 g -> 13.5 g in 7 years',
    url: 'https://davidtaylor.com.au/blog/2018/3/21/metal-on-metal-to-wear-and-wear-out',
    how: 'read',
  },
  EBG: {
    title: "second-hand dealer's guide: wash, EP, GP, HGE, RG with examples 18K GP, 1/40 18K RG",
    url: 'http://www.ebay.co.uk/gds/Gold-Solid-Filled-Rolled-Plated-What-do-they-mean-/10000000015906776/g.html',
    how: 'read',
  },
  EBM: {
    title: "seller's care note on coated topaz: no acid, ultrasonic or heat",
    url: 'http://www.ebay.co.uk/gds/MYSTIC-TOPAZ-Customer-Care-Guide-Information-/10000000001609571/g.html',
    how: 'read',
  },
  EIS31: {
    title: 'HSE Engineering Information Sheet 31 rev 1, cadmium in silver soldering',
    url: 'https://docslib.org/download/12900446/cadmium-in-silver-soldering-or-brazing-eis31',
    how: 'read',
  },
  EMR1: {
    title:
      'W. Emery, "Handling colored stones at the bench, part 1" (steamers can destroy many stones, corundum, emerald and diamond included)',
    url: 'https://www.ganoksin.com/article/handling-colored-stones-bench-part-1/',
    how: 'read',
  },
  EMR2: {
    title:
      'W. Emery, part 2: andalusite (no direct heat or sudden change; pickle and ultrasonic no problem; brittle, rub-over not advised)',
    url: 'https://www.ganoksin.com/article/handling-colored-stones-bench-part-2/',
    how: 'read',
  },
  EMR4: {
    title:
      'W. Emery, part 4: coral (soft, dyed, heat-sensitive, no acid and above all no pickle, some ultrasonic liquids unsafe, protected in places)',
    url: 'https://www.ganoksin.com/lesson/handling-colored-stones-at-the-bench-part-4/',
    how: 'read',
  },
  ESS: {
    title: 'Esslinger stone weight estimation formulas (two printed typos)',
    url: 'http://blog.esslinger.com/stone-weight-estimation-formula/',
    how: 'read',
  },
  EVW: {
    title: 'Everett, Washington ordinance: a transaction includes a trade with a member of the public',
    url: 'https://lfportal.everettwa.gov/WebLink/0/doc/698984/Page3.aspx',
    how: 'read',
  },
  FIN: {
    title: 'finishing.com 189/07 (K. Vlach): element SGs, karat SG ranges, why SG does not prove karat',
    url: 'http://www.finishing.com/189/07.shtml',
    how: 'read',
  },
  FRH2: {
    title:
      "58facettes, pricescope and navettejewellery on French marks: eagle's head 18 ct since 1838; boar's head and crab silver 800; Minerva 950 or 800; dog's head platinum 1912",
    url: 'https://navettejewellery.org/2020/02/14/french-silver-hallmarks/comment-page-1/',
    how: 'read',
  },
  FTC18: {
    title: '16 CFR 23.18 (2018 numbering; 23.17 earlier): weight and total weight of diamonds',
    url: 'http://edocket.access.gpo.gov/cfr_2005/janqtr/16cfr23.17.htm',
    how: 'read',
  },
  FTCAPP: {
    title: 'Appendix to 16 CFR Part 23: parts exempt from assay (springs, posts, snap tongues...)',
    url: 'https://ecfr.io/Title-16/Part-23/Appendix',
    how: 'read',
  },
  FTCPT: {
    title: 'FTC press release April 1997, platinum marking tiers (16 CFR 23.7; now 23.6)',
    url: 'https://ftc.gov/news-events/news/press-releases/1997/04/ftc-revises-guide-platinum-jewelry-marketing',
    how: 'read',
  },
  GAL: {
    title: 'Orchid 16491: laser strike on a 3 ct sapphire, recut to 2.25 ct',
    url: 'https://orchid.ganoksin.com/t/laser-welding/16491',
    how: 'read',
  },
  GAU: {
    title: 'gaukantiques.com: ivory cracks in heat, sun, dryness or wet; opals crack with heat',
    url: 'https://gaukantiques.com/2013/02/28/looking-after-jewellery-gemstones',
    how: 'read',
  },
  GCAL: {
    title: 'GCAL USA carat weight estimation formulas by cut',
    url: 'https://gcalusa.com/instructional-diamond-grading.html',
    how: 'read',
  },
  GFM: {
    title: 'gemfame.com identification chart (opal RI 1.44-1.46, SG 1.98-2.20)',
    url: 'https://www.gemfame.com/gemstone-identification-chart/',
    how: 'read',
  },
  GFX: {
    title: 'majorleague-dnb.com copy: GF at least 1/20 by weight (1/10 for 10k); RGP less',
    url: 'https://majorleague-dnb.com/?p=144',
    how: 'read',
  },
  GGG: {
    title: 'gemgate.com girdle thickness adjustment table',
    url: 'https://gemgate.com/diamond-info/advanced-diamond-information/estimating-mounted-diamond-weight/diamond-weight-estimation-girdle-thickness-judgment/',
    how: 'read',
  },
  GGJ: {
    title: 'G&G fall 1992, Fritsch et al., bleached and polymer-impregnated jadeite (abstract)',
    url: 'https://www.gia.edu/gems-gemology/fall-1992-bleaching-jadeite-fritsch',
    how: 'read',
  },
  GGM: {
    title: 'gemgate.com marquise formula, L/W table, worked example',
    url: 'https://gemgate.com/diamond-info/advanced-diamond-information/estimating-mounted-diamond-weight/diamond-weight-estimate-marquise-cut/',
    how: 'read',
  },
  GGR: {
    title: 'gemgate.com round brilliant weight formula with worked examples',
    url: 'https://gemgate.com/diamond-info/advanced-diamond-information/estimating-mounted-diamond-weight/diamond-weight-estimate-round-brillinat-cut/',
    how: 'read',
  },
  GIAM: { title: 'GIA-type gem properties (Gem Reference Guide values)', url: '', how: 'memory' },
  GJW: {
    title: 'goldenjuwelier.com list of finenesses: gold 999 to 333; silver 999, 980, 958, 950, 925, 917, 900, 835, 833, 830, 800',
    url: 'http://www.goldenjuwelier.com/-ber-gold.html',
    how: 'read',
  },
  GLE: {
    title: 'Ganoksin, laser repair of an emerald and diamond ring with stones in place',
    url: 'https://www.ganoksin.com/article/laser-repair-emerald-diamond-ring-repair/',
    how: 'read',
  },
  GLT: {
    title: 'glitteringstones.com: lapis, malachite, opal, pearl, coral, amber wiped only',
    url: 'https://glitteringstones.com/gem-care-handling.htm',
    how: 'read',
  },
  GNU: {
    title:
      'GNU units 2.22 database file definitions.units (Debian package units 2.22-2): mass, karat, AWG (cites ASTM B258), ring sizes (cites BS 6820), element densities',
    url: 'Debian: units_2.22-2_amd64.deb /usr/share/units/definitions.units',
    how: 'read',
  },
  GSC: {
    title: 'Ganoksin, repairing a shell cameo pin by pulse-arc welding with the cameo in place',
    url: 'https://www.ganoksin.com/lesson/repairing-a-sterling-silver-shell-cameo-pin/',
    how: 'read',
  },
  GSH: {
    title: 'goldandsilverhallmarks.co.uk 2011: crown with .916 or .750; .375, .5, .625 without crown; .585 later',
    url: 'http://www.goldandsilverhallmarks.co.uk/2011/03/how-to-identify-gold-hallmarks.html',
    how: 'read',
  },
  GST: {
    title: 'gemstory.com.au trial: pearl ruined overnight in vinegar and orange juice, opal unharmed by the same',
    url: 'http://www.gemstory.com.au/experiment/soak-pearl-into.html',
    how: 'read',
  },
  HA5: {
    title: 'Hallmarking Act 1973 s5, text as at 6 April 2007',
    url: 'https://legislation.gov.uk/ukpga/1973/43/section/5/2007-04-06?view=plain',
    how: 'read',
  },
  HAM: { title: 'hamidbros.com.au workshop warnings', url: 'https://www.hamidbros.com.au/workshop-warnings/', how: 'read' },
  HAZ: { title: 'NLM Haz-Map, jewelry making', url: 'https://hazmap.nlm.nih.gov/category-details?id=16&table=tblactivities', how: 'read' },
  HB44: {
    title: 'NIST Handbook 44 App. C / NIST SP 811 App. B (grain 64.79891 mg exact; carat 200 mg)',
    url: 'https://www.nist.gov/pml/special-publication-811',
    how: 'memory',
  },
  HGL: {
    title: 'UK Assay Offices Hallmarking Guidance Notes 2010: exemption is on metal weight only, stones excluded',
    url: 'https://content.yudu.com/web/2y2qk/0A2y2qn/Bench2/html/23.html',
    how: 'read',
  },
  HMC: {
    title: 'Hallmarking Convention, UK country profile (finenesses and weight exemptions)',
    url: 'https://hallmarkingconvention.org/en/country-profile/united-kingdom',
    how: 'read',
  },
  HMP: {
    title:
      'Hall marks on gold and silver plate, pp. 120-121: 22, 20 (Ireland only), 18, 15, 12, 9 carat; silver 11 oz 10 dwt and 11 oz 2 dwt',
    url: 'https://www.yumpu.com/en/document/view/11675070/hall-marks-on-gold-silver-plate/193',
    how: 'read',
  },
  HWB: {
    title: 'Encyclopedia of Britain, hallmarks: lion passant since 1544; Edinburgh thistle 1759-1974, then lion rampant; 18 or .75 on gold',
    url: 'http://www.historyworld.net/Articles/PlainTextArticles.asp?aid=zae&pid=501',
    how: 'read',
  },
  IER: { title: 'ierte.jp table of gems against heat, knocks and ultrasonic', url: 'https://ierte.jp/en/pages/gemstone', how: 'read' },
  IEX: {
    title: 'Irish Examiner 2020: foil-backed stones not in water; enamel chips easily',
    url: 'https://www.irishexaminer.com/property/homeandoutdoors/arid-40034207.html',
    how: 'read',
  },
  IFS: {
    title: "idealfinancialsecurities, claim dos and don'ts: do not admit liability, make no offer, repair nothing without consent",
    url: 'https://idealfinancialsecurities.com/claim-settlement-do-donts.aspx',
    how: 'read',
  },
  IGS1: {
    title: 'IGS "Gemstone physical properties": SG of popular gems',
    url: 'https://www.gemsociety.org/article/the-physical-properties-of-gemstones/',
    how: 'read',
  },
  IGS2: {
    title: 'IGS diamond look-alike chart: SG and birefringence',
    url: 'https://www.gemsociety.org/article/diamond-look-alike-comparison-chart/',
    how: 'read',
  },
  IJ: {
    title: 'indianjeweller.in on the Nov 2024 norms (2.5 -> 2.25, silver 3.2 -> 3)',
    url: 'https://indianjeweller.in/Indian-Jewellery-News/15157/government-updates-wastage-norms-for-jewellery-exports-to-support-industry-needs',
    how: 'read',
  },
  INT: {
    title: 'poincons.interor.fr: Italy 1872, small gold 900',
    url: 'https://poincons.interor.fr/petite-tete-de-jupiter-poincon-italie/',
    how: 'read',
  },
  ISO9202: {
    title: 'ISO 9202 (FDIS 2026 abstract): minimum values only, minus tolerances not allowed, solders excluded',
    url: 'https://theiteh.com/catalog/standards/iso/4be7c47f-72b6-4914-984e-68587e8412f1/iso-fdis-9202',
    how: 'read',
  },
  ITB: {
    title: 'international-trader blog 2010: UK silver 800, 925, 958, 999',
    url: 'http://international-trader.blogspot.com/2010/07/modern-uk-silver-hallmarks-in-current.html',
    how: 'read',
  },
  JBD: {
    title: 'jbdiamonds.com: alexandrite sensitive to knocks, colour may change in great heat',
    url: 'https://jbdiamonds.com/blogs/education/colored-stones',
    how: 'read',
  },
  JBL: {
    title:
      'T. Weishaar, "If you can\'t afford to replace it, don\'t laser it", Jewellery Business: impurity bursts, about one stone in a hundred',
    url: 'https://www.jewellerybusiness.com/features/if-you-cant-afford-to-replace-it-dont-laser-it/',
    how: 'read',
  },
  JCKB: {
    title: 'JCK: which gems may be boiled',
    url: 'https://www.jckonline.com/magazine-article/teaching-customers-about-proper-gemcare/',
    how: 'read',
  },
  JCL: {
    title:
      'jewelleryclean.com, pieces to be cautious with: turquoise, malachite, mother of pearl, ivory, bone, opal, pearl, coated topaz, emerald, peridot',
    url: 'https://jewelleryclean.com/jewellery-you-should-clean-cautiously/',
    how: 'read',
  },
  JMK: {
    title: 'jewelrymonk.com: which stones take soldering heat / which do not',
    url: 'http://jewelrymonk.com/2016/03/09/gemstone-that-can-take-heat-and-ultrasonics/',
    how: 'read',
  },
  JNN: {
    title: 'jnn.jp (Japanese), marks of fineness: K24 999, K22 916, K20 833, K18 750, K14 585, K10 416, K9 375; Pt999, Pt950, Pt900, Pt850',
    url: 'https://jnn.jp/diary.cgi?d=2021_03',
    how: 'read',
  },
  JRG: { title: 'JRG recovery & refining SOP: four material classes', url: 'http://jrginc.com/SOP/sop.html', how: 'read' },
  JZA: {
    title: 'jazzage.co.uk, standards of silver, with the alloys that hold no silver',
    url: 'https://jazzage.co.uk/silver-standards',
    how: 'read',
  },
  KAY: { title: 'Retail diamond weight-range chart no. 1', url: 'https://www.kayoutlet.com/diamond-carat-weights', how: 'read' },
  KIR: {
    title: 'Kirov studio: 7 mm platinum band adds almost 1 g per two sizes (its 450->600 = "25 %" is wrong)',
    url: 'https://www.kirovjewellerystudio.co.za/wedding-ring-info-thickness-width-finger-size/',
    how: 'read',
  },
  KKM: {
    title: 'kinkaimasu.jp (Japanese): old pieces bear Pm instead of Pt; Pt1000 is Pt999 since 2012',
    url: 'https://kinkaimasu.jp/trivia/platinum/',
    how: 'read',
  },
  KPL: {
    title: 'thingsgrandmakept.com and gold-calculator.net: KP means karat plumb, at least the stamped karat, not plated',
    url: 'https://thingsgrandmakept.com/glossary/kp/',
    how: 'read',
  },
  LHG: {
    title: 'london hallmarks page: lion passant 925, Britannia 958, orb for platinum 950',
    url: 'http://halopom-po-evropam.ru/london-hallmarks-gold/',
    how: 'read',
  },
  LSA: {
    title: 'eng.legend-store.com: ashes jewellery is never fully watertight',
    url: 'https://eng.legend-store.com/fill-cremation-ashes-jewelry',
    how: 'read',
  },
  MCC: {
    title: 'T. McCreight, stone setting tools FAQ, Ganoksin: amber is so soft that steel tools scratch it',
    url: 'https://ganoksin.com/article/stone-setting-tools-faqs',
    how: 'read',
  },
  MCK: {
    title: 'McCracken County, Kentucky: dealer is one purchasing, trading for or otherwise acquiring pre-owned jewelry or precious metal',
    url: 'https://codelibrary.amlegal.com/codes/mccrackencoky/latest/mccrackenco_ky/0-0-0-2455',
    how: 'read',
  },
  MD606: {
    title: 'Maryland Commercial Law 14-606 (coin silver 0.900, divergence 0.004)',
    url: 'http://laws9.com/statutes/maryland/commercial-law/title-14/subtitle-6/14-606',
    how: 'read',
  },
  MGC: {
    title: 'MSU gemmological centre FAQ: estimate within +/-5 % accessible stone, +/-15 % inaccessible',
    url: 'https://mgc-labs.ru/en/faq/kak-rasschitat-ves-brillianta-v-yuvelirnom-izdelii/',
    how: 'read',
  },
  MILL: {
    title: 'jewelrysourcemillcreek.com care guide (no-ultrasonic list)',
    url: 'https://www.jewelrysourcemillcreek.com/items-1/gemstone---care',
    how: 'read',
  },
  MIM: { title: 'en.mimi.hu jewelry entry GP: GF, GP, RGP, 1/20 are plated', url: 'http://en.mimi.hu/jewelry/gp.html', how: 'read' },
  MIR: { title: 'mirkorusrough.com gem identification table (RI, SG)', url: 'https://mirkorusrough.com/942-2', how: 'read' },
  MJS: {
    title: 'MJSA Journal 2007 universal gold solder scale: grade = alloy solidus minus solder liquidus',
    url: 'http://www.mjsajournal.org/features/0507/one.php',
    how: 'read',
  },
  MKY: { title: 'marukiya783.jp (Japanese): K18 is 750; K18GP is plating', url: 'https://marukiya783.jp/?p=442', how: 'read' },
  MM1: { title: 'aakashdiamonds.com round mm-ct chart', url: 'https://aakashdiamonds.com/melee-yellow.html', how: 'read' },
  MM2: { title: 'rock2polish.com round mm-ct chart', url: 'https://rock2polish.com/pages/round-cut-diamond-size-chart-mm', how: 'read' },
  MOU: {
    title: 'moissaniteusa.com handling notes: may be boiled in acid, coated with boric acid; square cuts break at the girdle',
    url: 'http://www.moissaniteusa.com/index.php?main_page=page&id=8&zenid=4likp48nsnni8pvgarf847q6l4',
    how: 'read',
  },
  MOZ: {
    title:
      'moissanite.co.nz bench guide: colourless safe in ultrasonic and steam, cool slowly, no quench; colour-treated stones out of heat',
    url: 'https://www.moissanite.co.nz/jewellers-bench-guide/',
    how: 'read',
  },
  MSC: {
    title: 'macbethscott glossary: notify claims and incidents promptly, a condition precedent',
    url: 'https://macbethscott.co.uk/glossary',
    how: 'read',
  },
  MYD: {
    title: 'mindyourdiamonds 2009: filling glass sweats out under a torch; a filled diamond may not survive the ultrasonic',
    url: 'https://mindyourdiamonds.wordpress.com/2009/11/03/clarity-enhancement-of-diamonds-part-2-fracture-filling/',
    how: 'read',
  },
  NBL: {
    title: 'N. Bloom & Son, jewellery care: nothing liquid on closed settings; shell, coral, ivory, jet may be washed',
    url: 'https://nbloom.com/jewellery-care',
    how: 'read',
  },
  NGJ: {
    title: 'Nepal gem and jewellery association, "Gems for keeps" (2008): amber, amethyst, chalcedony, emerald, garnet',
    url: 'http://www.negja.org.np/index.php?page=articles&id=2',
    how: 'read',
  },
  NKR: { title: 'nikolaroza.com on Russian silver: zolotnik and Soviet 875, 916', url: 'https://nikolaroza.com/?p=35535', how: 'read' },
  NLF: {
    title:
      'Nancy L. T. Hamilton, flush setting: for hard and tough stones; emerald hardly survives; many quartz stones suffer from pressure',
    url: 'https://nancylthamilton.com/techniques/stone-setting/flush-setting-gem-stones/',
    how: 'read',
  },
  NPG: { title: 'NIOSH Pocket Guide, ethyl alcohol (npgd0262)', url: 'https://www.cdc.gov/niosh/npg/npgd0262.html', how: 'read' },
  OPC: {
    title: 'oldpueblocoin.com: 10% IRID PLAT; 14k or 18k followed by PLAT means gold with a platinum head',
    url: 'https://oldpueblocoin.com/platinum-markings/',
    how: 'read',
  },
  OPD: {
    title: 'adornajoygems and hollywoodbodyjewelry on opal doublets and triplets: soaking lets water between the layers',
    url: 'http://adornajoygems.blogspot.com/2013/04/opal-doublets-and-triplets.html',
    how: 'read',
  },
  ORB: { title: 'orobel.biz: Portuguese gold 19.2 ct, 800', url: 'https://www.orobel.biz/en/news-en/gold-portugal-19-carats', how: 'read' },
  ORC: {
    title: 'Orchid 20532, cameo unsetting: shell stays away from solder heat; cutting the setting preferred',
    url: 'https://orchid.ganoksin.com/t/cameo-unsetting/20532',
    how: 'read',
  },
  ORCZ: {
    title: 'Orchid 27860: cubic zirconia near the torch, cool in air, never quench',
    url: 'https://orchid.ganoksin.com/t/soldering-around-cz/27860',
    how: 'read',
  },
  ORE: {
    title: 'Orchid 22761, enamel repair (heat and quench named as a way to make old enamel leave the metal)',
    url: 'https://orchid.ganoksin.com/t/enameling-repair/22761/1',
    how: 'read',
  },
  ORF: {
    title: 'Orchid 4011: near-invisible alcohol flames at the bench',
    url: 'https://orchid.ganoksin.com/t/shop-accidents/4011',
    how: 'read',
  },
  ORH: {
    title: 'Orchid 36223, 14503, 42796, 20412: heat, fillings, boron etches corundum, no quench',
    url: 'https://orchid.ganoksin.com/t/what-stones-can-handle-heat/36223/9',
    how: 'read',
  },
  ORH09: {
    title: 'Orchid archive January 2009, what stones can handle heat: one view that no stone should be heated now, because of treatments',
    url: 'http://www.ganoksin.com/orchid/archive/200901/msg01227.htm',
    how: 'read',
  },
  ORK: {
    title: 'Orchid thread 555: karat raising/lowering formulas',
    url: 'https://orchid.ganoksin.com/t/fwd-conversion-chart-table/555',
    how: 'read',
  },
  ORPG: {
    title: 'Orchid 40672, gold plating with pearls set: acids dissolve them; hot alkaline baths act slowly on the binder',
    url: 'https://orchid.ganoksin.com/t/gold-plating-pearl-jewelry/40672',
    how: 'read',
  },
  ORPM: {
    title: 'Orchid 34797, masking pearls for rhodium: contact or even fumes ruin the surface',
    url: 'https://orchid.ganoksin.com/t/masking-pearles-for-rhodium-plating/34797',
    how: 'read',
  },
  ORRD: {
    title: 'Orchid 14486: dark rhodium behind a stone that could not be cleaned showed through the stone',
    url: 'https://orchid.ganoksin.com/t/rhodium-rant-rhodium-plated-diamond/14486',
    how: 'read',
  },
  ORS: {
    title: 'Orchid 15419 silver solder compositions and melting points',
    url: 'https://orchid.ganoksin.com/t/gold-solder-correction-and-silver-solder/15419',
    how: 'read',
  },
  ORT: {
    title: 'Orchid 30943 and archive January 2002: turquoise and torch heat, and not in acid; burnable backing under old stones',
    url: 'https://orchid.ganoksin.com/t/repairing-silver-and-turquoise-ring/30943',
    how: 'read',
  },
  ORW: {
    title: 'Orchid 30252, setting emeralds: an oiled emerald turned milky under gentle steam',
    url: 'https://orchid.ganoksin.com/t/setting-emeralds-carefully/30252',
    how: 'read',
  },
  OSP: {
    title: "osprey.fr, dog's head: platinum 950 from 1912-13 to 1994, then small works 850",
    url: 'https://www.osprey.fr/en/?p=16975',
    how: 'read',
  },
  PGR: {
    title:
      'Parkin & Gerrish, gold standards through the ages: ct to permille; 9, 12, 15 ct from 1854; 12 and 15 replaced by 14 (585) in 1932',
    url: 'https://www.parkinandgerrish.com/blogs/the-collector-s-notebook/gold-standards-through-the-ages-from-georgian-glow-to-modern-marks-now-with-the-key-dates-collectors-love',
    how: 'read',
  },
  PJ02: {
    title: 'Professional Jeweler, February 2002: covering emerald and tanzanite with tape or putty during laser welding',
    url: 'http://www.professionaljeweler.com/archives/articles/2002/feb02/0202pb5.html',
    how: 'read',
  },
  PLM: {
    title: 'plumbclub.com bench guide to moissanite: hammer work allowed on a true seat; points guarded',
    url: 'https://plumbclub.com/bench-jewelers-guide-to-moissanite',
    how: 'read',
  },
  PRL: {
    title: 'Pearl weight tables: beads.how (based on Shima Pearl Co. data), pearl-guide.com',
    url: 'http://beads.how/details-Pearl-Weight--Pearl-Weight-Conversions-in-Wholesale-1517.html',
    how: 'read',
  },
  PRS: {
    title:
      "pricescope thread 201760, setter's answer: flush setting wants hardness of about 8 or more; tanzanite and apatite likely to scratch or split",
    url: 'https://www.pricescope.com/community/threads/burnish-flush-setting.201760/',
    how: 'read',
  },
  REF: {
    title: 'reference.com: iridplat is 90 % platinum and 10 % iridium; plat at least 95 %',
    url: 'https://www.reference.com/beauty-fashion/markings-platinum-ring-ebc898841138c9fc',
    how: 'read',
  },
  RJW: {
    title: 'R. J. Williams standard formulas (coloured stones)',
    url: 'https://rub.dendritics.com/scales/standard-formula.asp',
    how: 'read',
  },
  ROG: { title: 'Retail diamond weight-range chart no. 2', url: 'https://www.thinkrogers.com/diamond-weight-ranges', how: 'read' },
  RVL: {
    title: 'rongvanglab note of June 2012 on G&G: cleaning liquids eat the filler; take such rubies out before any repair',
    url: 'https://rongvanglab.com.vn/tin-tuc-su-kien/tin-nong/ruby-xu-ly-lap-day-thuy-tinh-chi-bi-hu-hong-trong-khi-chinh-sua-lam-moi-trang-suc-ban-tin-thang-062012?pagenumber=5',
    how: 'read',
  },
  SCC: {
    title: 'silver-collector.com: EP, EPNS, EPBM are plate; lion passant, lion rampant, crowned harp, Britannia are silver',
    url: 'https://www.silver-collector.com/t/how-to-distinguish-between-solid-silver-and-silver-plate/6999',
    how: 'read',
  },
  SIL: {
    title: 'silverspeck.com treatment guide: amazonite, amber, aquamarine, coral, cultured pearl',
    url: 'https://silverspeck.com/pages/gemstone-treatment-guide',
    how: 'read',
  },
  SPR: {
    title: 'thesprucecrafts: silver 950, 925, 900 coin, 800-850; quadruple plate',
    url: 'https://www.thesprucecrafts.com/silver-marks-and-terms-149394',
    how: 'read',
  },
  STE: {
    title: 'stellaeluce.com care table: heat fades or cracks amethyst, citrine, aquamarine; coral extremely sensitive to flame',
    url: 'https://stellaeluce.com/pages/gemstones-care-guide',
    how: 'read',
  },
  STEIN: {
    title: 'Steinhauser, Gold Bulletin 41(1) 2008 51-57, abrasive wear of a gold wedding ring',
    url: 'https://link.springer.com/article/10.1007%2FBF03215623',
    how: 'read',
  },
  STG: {
    title: 'Stuller article 2012, specific gravities of jewellery alloys and conversion example',
    url: 'https://jshow.legacy.prod.stullercloud.com/articles/view/where-to-find-gravity-of-materials',
    how: 'read',
  },
  STS: {
    title: 'Stuller bench article "To steam or not to steam": ultrasonic and steam chart by stone',
    url: 'https://stuller.com/benchjeweler/resources/bencharticles/view/to-steam-or-not-to-steam',
    how: 'read',
  },
  SUBS: {
    title: 'SUBSPORTplus case 442: boric acid/borax in a jewellery workshop, SVHC, Repr. 1B',
    url: 'https://www.subsportplus.eu/EN/Cases/Case-story-database/case-story-database_details_node?idDatarecord=1208543',
    how: 'read',
  },
  SVC: {
    title: 'silvercollection.it, silver fineness marks: 10 dinheiros 833, loth 12 = 750, 13 = 812.5, 14 = 875',
    url: 'https://www.silvercollection.it/dictionarysilverfinenessmarks.html',
    how: 'read',
  },
  TDS: {
    title:
      'topdogscrapgold.co.uk platinum guide: UK marks only from 1975; before that Plat or Platinum of no fixed fineness; 850, 900, 950, 999',
    url: 'https://topdogscrapgold.co.uk/article/guide-platinum-hallmarks',
    how: 'read',
  },
  TJ: {
    title: 'talk.jewelry thread 16956: coloured-stone formulas and SG list',
    url: 'https://talk.jewelry/threads/colored-stone-weight-estimation-table.16956/',
    how: 'read',
  },
  TJC: {
    title: 'tjc.co.uk gemstone treatment guide: amazonite, amber and others',
    url: 'https://tjc.co.uk/gemstone-treatment-guide.html',
    how: 'read',
  },
  TMT: {
    title:
      'tmtpages.com "Approximate specific gravities of alloys": reciprocal rule, worked 14K example, Table 4 (SG, melting point, ozt/in3)',
    url: 'http://tmtpages.com/specific-gravity.htm',
    how: 'read',
  },
  TRJ: {
    title: 'The Retail Jeweler 2012, GIA dispatch: lead-glass-filled ruby is unstable, avoid any repair step',
    url: 'http://www.theretailjeweler.com/new-noteworthy/2012/02/14/lead-glass-and-rubies%E2%80%A6-gia-take-aways.html',
    how: 'read',
  },
  TUK: {
    title: 'Tukes (Finland) fineness requirements: no minus tolerance; choose next mark down',
    url: 'https://tukes.fi/en/products-and-services/articles-of-precious-metals-jewellery-and-watches/material-requirements/fineness-requirements',
    how: 'read',
  },
  UKSOL: {
    title: 'UK hallmarking minimum solder fineness table as copied in Orchid thread 33480',
    url: 'https://orchid.ganoksin.com/t/hallmarking-and-solder/33480',
    how: 'read',
  },
  UNI: {
    title: 'Britannica "Important gemstones" table (copy at universalium)',
    url: 'https://universalium.en-academic.com/295410/Important_gemstones',
    how: 'read',
  },
  USC295: {
    title:
      '15 U.S.C. 295 as amended by Pub. L. 94-450 (1976): 3/1000; 7/1000 incl. solder (3/1000 for watchcases and flatware); before: half a carat / one carat',
    url: 'https://checkoutapi.com/uscode/15/295/notes',
    how: 'read',
  },
  USC296: {
    title: '15 U.S.C. 296 sterling/coin: 4/1000; 10/1000 incl. solder',
    url: 'https://www.law.cornell.edu/uscode/text/15/296',
    how: 'memory',
  },
  VAL: {
    title:
      'valentinafine.com gemstone cleaning: corundum untreated, heated or lattice-diffused may be steamed; filled or dyed only wiped; spinel not in the ultrasonic',
    url: 'https://valentinafine.com/blogs/news/how-to-clean-gemstone-jewellery',
    how: 'read',
  },
  VCS: {
    title: 'thevintagecompactshop: solid, front and back, rolled, plated, vermeil told apart',
    url: 'https://thevintagecompactshop.com/blogs/antique-and-collectible-history/what-is-the-difference-between-solid-gold-gold-plated-rolled-gold',
    how: 'read',
  },
  WNC: {
    title: 'walmsleyscommercial glossary: claims condition, with a non-admission-of-liability clause in liability policies',
    url: 'https://www.walmsleyscommercial.com/insuranceterms/claims-condition/',
    how: 'read',
  },
  YGM: {
    title: 'yourgemologist.com, coated topaz: the film flakes while setting and comes off in an ultrasonic',
    url: 'https://yourgemologist.com/topazmystic.html',
    how: 'read',
  },
};
