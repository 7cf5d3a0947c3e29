// Random guards as the emitter writes them; `INSTA_UPDATE=always cargo test --test guards` writes this file.

use ::oxyfolio::book::{Comparison, Fact, HazardId, Measure};
use ::oxyfolio::guard::{Broken, Evaluator, Observed, Row, Truth};
use ::oxyfolio::guard::compare::{at_least, at_most, equal, greater, less, not_equal, within};
use ::oxyfolio::guard::mask::{ByThree, Doubt, Sign, answer, by_three, padded, pick, steps, steps_between};
use ::oxyfolio::quantity::{Flow, Limit, Percent, Pressure, Range, Temperature, Time, TimeUnit};
use super::{RULEBOOK, TABLES, condition, device, group};

#[doc = "random-0: Random guards (random.md:1)."]
pub const RANDOM_0: HazardId = HazardId(0);
#[doc = "random-1: Random guards (random.md:2)."]
pub const RANDOM_1: HazardId = HazardId(1);
#[doc = "random-2: Random guards (random.md:3)."]
pub const RANDOM_2: HazardId = HazardId(2);
#[doc = "random-3: Random guards (random.md:4)."]
pub const RANDOM_3: HazardId = HazardId(3);
#[doc = "random-4: Random guards (random.md:5)."]
pub const RANDOM_4: HazardId = HazardId(4);
#[doc = "random-5: Random guards (random.md:6)."]
pub const RANDOM_5: HazardId = HazardId(5);
#[doc = "random-6: Random guards (random.md:7)."]
pub const RANDOM_6: HazardId = HazardId(6);
#[doc = "random-7: Random guards (random.md:8)."]
pub const RANDOM_7: HazardId = HazardId(7);
#[doc = "random-8: Random guards (random.md:9)."]
pub const RANDOM_8: HazardId = HazardId(8);
#[doc = "random-9: Random guards (random.md:10)."]
pub const RANDOM_9: HazardId = HazardId(9);
#[doc = "random-10: Random guards (random.md:11)."]
pub const RANDOM_10: HazardId = HazardId(10);
#[doc = "random-11: Random guards (random.md:12)."]
pub const RANDOM_11: HazardId = HazardId(11);
#[doc = "random-12: Random guards (random.md:13)."]
pub const RANDOM_12: HazardId = HazardId(12);
#[doc = "random-13: Random guards (random.md:14)."]
pub const RANDOM_13: HazardId = HazardId(13);
#[doc = "random-14: Random guards (random.md:15)."]
pub const RANDOM_14: HazardId = HazardId(14);
#[doc = "random-15: Random guards (random.md:16)."]
pub const RANDOM_15: HazardId = HazardId(15);
#[doc = "random-16: Random guards (random.md:17)."]
pub const RANDOM_16: HazardId = HazardId(16);
#[doc = "random-17: Random guards (random.md:18)."]
pub const RANDOM_17: HazardId = HazardId(17);
#[doc = "random-18: Random guards (random.md:19)."]
pub const RANDOM_18: HazardId = HazardId(18);
#[doc = "random-19: Random guards (random.md:20)."]
pub const RANDOM_19: HazardId = HazardId(19);
#[doc = "random-20: Random guards (random.md:21)."]
pub const RANDOM_20: HazardId = HazardId(20);
#[doc = "random-21: Random guards (random.md:22)."]
pub const RANDOM_21: HazardId = HazardId(21);
#[doc = "random-22: Random guards (random.md:23)."]
pub const RANDOM_22: HazardId = HazardId(22);
#[doc = "random-23: Random guards (random.md:24)."]
pub const RANDOM_23: HazardId = HazardId(23);
#[doc = "random-24: Random guards (random.md:25)."]
pub const RANDOM_24: HazardId = HazardId(24);
#[doc = "random-25: Random guards (random.md:26)."]
pub const RANDOM_25: HazardId = HazardId(25);
#[doc = "random-26: Random guards (random.md:27)."]
pub const RANDOM_26: HazardId = HazardId(26);
#[doc = "random-27: Random guards (random.md:28)."]
pub const RANDOM_27: HazardId = HazardId(27);
#[doc = "random-28: Random guards (random.md:29)."]
pub const RANDOM_28: HazardId = HazardId(28);
#[doc = "random-29: Random guards (random.md:30)."]
pub const RANDOM_29: HazardId = HazardId(29);
#[doc = "random-30: Random guards (random.md:31)."]
pub const RANDOM_30: HazardId = HazardId(30);
#[doc = "random-31: Random guards (random.md:32)."]
pub const RANDOM_31: HazardId = HazardId(31);
#[doc = "random-32: Random guards (random.md:33)."]
pub const RANDOM_32: HazardId = HazardId(32);
#[doc = "random-33: Random guards (random.md:34)."]
pub const RANDOM_33: HazardId = HazardId(33);
#[doc = "random-34: Random guards (random.md:35)."]
pub const RANDOM_34: HazardId = HazardId(34);
#[doc = "random-35: Random guards (random.md:36)."]
pub const RANDOM_35: HazardId = HazardId(35);
#[doc = "random-36: Random guards (random.md:37)."]
pub const RANDOM_36: HazardId = HazardId(36);
#[doc = "random-37: Random guards (random.md:38)."]
pub const RANDOM_37: HazardId = HazardId(37);
#[doc = "random-38: Random guards (random.md:39)."]
pub const RANDOM_38: HazardId = HazardId(38);
#[doc = "random-39: Random guards (random.md:40)."]
pub const RANDOM_39: HazardId = HazardId(39);
#[doc = "random-40: Random guards (random.md:41)."]
pub const RANDOM_40: HazardId = HazardId(40);
#[doc = "random-41: Random guards (random.md:42)."]
pub const RANDOM_41: HazardId = HazardId(41);
#[doc = "random-42: Random guards (random.md:43)."]
pub const RANDOM_42: HazardId = HazardId(42);
#[doc = "random-43: Random guards (random.md:44)."]
pub const RANDOM_43: HazardId = HazardId(43);
#[doc = "random-44: Random guards (random.md:45)."]
pub const RANDOM_44: HazardId = HazardId(44);
#[doc = "random-45: Random guards (random.md:46)."]
pub const RANDOM_45: HazardId = HazardId(45);
#[doc = "random-46: Random guards (random.md:47)."]
pub const RANDOM_46: HazardId = HazardId(46);
#[doc = "random-47: Random guards (random.md:48)."]
pub const RANDOM_47: HazardId = HazardId(47);
#[doc = "random-48: Random guards (random.md:49)."]
pub const RANDOM_48: HazardId = HazardId(48);
#[doc = "random-49: Random guards (random.md:50)."]
pub const RANDOM_49: HazardId = HazardId(49);
#[doc = "random-50: Random guards (random.md:51)."]
pub const RANDOM_50: HazardId = HazardId(50);
#[doc = "random-51: Random guards (random.md:52)."]
pub const RANDOM_51: HazardId = HazardId(51);
#[doc = "random-52: Random guards (random.md:53)."]
pub const RANDOM_52: HazardId = HazardId(52);
#[doc = "random-53: Random guards (random.md:54)."]
pub const RANDOM_53: HazardId = HazardId(53);
#[doc = "random-54: Random guards (random.md:55)."]
pub const RANDOM_54: HazardId = HazardId(54);
#[doc = "random-55: Random guards (random.md:56)."]
pub const RANDOM_55: HazardId = HazardId(55);
#[doc = "random-56: Random guards (random.md:57)."]
pub const RANDOM_56: HazardId = HazardId(56);
#[doc = "random-57: Random guards (random.md:58)."]
pub const RANDOM_57: HazardId = HazardId(57);
#[doc = "random-58: Random guards (random.md:59)."]
pub const RANDOM_58: HazardId = HazardId(58);
#[doc = "random-59: Random guards (random.md:60)."]
pub const RANDOM_59: HazardId = HazardId(59);
#[doc = "random-60: Random guards (random.md:61)."]
pub const RANDOM_60: HazardId = HazardId(60);
#[doc = "random-61: Random guards (random.md:62)."]
pub const RANDOM_61: HazardId = HazardId(61);
#[doc = "random-62: Random guards (random.md:63)."]
pub const RANDOM_62: HazardId = HazardId(62);
#[doc = "random-63: Random guards (random.md:64)."]
pub const RANDOM_63: HazardId = HazardId(63);
#[doc = "random-64: Random guards (random.md:65)."]
pub const RANDOM_64: HazardId = HazardId(64);
#[doc = "random-65: Random guards (random.md:66)."]
pub const RANDOM_65: HazardId = HazardId(65);
#[doc = "random-66: Random guards (random.md:67)."]
pub const RANDOM_66: HazardId = HazardId(66);
#[doc = "random-67: Random guards (random.md:68)."]
pub const RANDOM_67: HazardId = HazardId(67);
#[doc = "random-68: Random guards (random.md:69)."]
pub const RANDOM_68: HazardId = HazardId(68);
#[doc = "random-69: Random guards (random.md:70)."]
pub const RANDOM_69: HazardId = HazardId(69);
#[doc = "random-70: Random guards (random.md:71)."]
pub const RANDOM_70: HazardId = HazardId(70);
#[doc = "random-71: Random guards (random.md:72)."]
pub const RANDOM_71: HazardId = HazardId(71);
#[doc = "random-72: Random guards (random.md:73)."]
pub const RANDOM_72: HazardId = HazardId(72);
#[doc = "random-73: Random guards (random.md:74)."]
pub const RANDOM_73: HazardId = HazardId(73);
#[doc = "random-74: Random guards (random.md:75)."]
pub const RANDOM_74: HazardId = HazardId(74);
#[doc = "random-75: Random guards (random.md:76)."]
pub const RANDOM_75: HazardId = HazardId(75);
#[doc = "random-76: Random guards (random.md:77)."]
pub const RANDOM_76: HazardId = HazardId(76);
#[doc = "random-77: Random guards (random.md:78)."]
pub const RANDOM_77: HazardId = HazardId(77);
#[doc = "random-78: Random guards (random.md:79)."]
pub const RANDOM_78: HazardId = HazardId(78);
#[doc = "random-79: Random guards (random.md:80)."]
pub const RANDOM_79: HazardId = HazardId(79);
#[doc = "random-80: Random guards (random.md:81)."]
pub const RANDOM_80: HazardId = HazardId(80);
#[doc = "random-81: Random guards (random.md:82)."]
pub const RANDOM_81: HazardId = HazardId(81);
#[doc = "random-82: Random guards (random.md:83)."]
pub const RANDOM_82: HazardId = HazardId(82);
#[doc = "random-83: Random guards (random.md:84)."]
pub const RANDOM_83: HazardId = HazardId(83);
#[doc = "random-84: Random guards (random.md:85)."]
pub const RANDOM_84: HazardId = HazardId(84);
#[doc = "random-85: Random guards (random.md:86)."]
pub const RANDOM_85: HazardId = HazardId(85);
#[doc = "random-86: Random guards (random.md:87)."]
pub const RANDOM_86: HazardId = HazardId(86);
#[doc = "random-87: Random guards (random.md:88)."]
pub const RANDOM_87: HazardId = HazardId(87);
#[doc = "random-88: Random guards (random.md:89)."]
pub const RANDOM_88: HazardId = HazardId(88);
#[doc = "random-89: Random guards (random.md:90)."]
pub const RANDOM_89: HazardId = HazardId(89);
#[doc = "random-90: Random guards (random.md:91)."]
pub const RANDOM_90: HazardId = HazardId(90);
#[doc = "random-91: Random guards (random.md:92)."]
pub const RANDOM_91: HazardId = HazardId(91);
#[doc = "random-92: Random guards (random.md:93)."]
pub const RANDOM_92: HazardId = HazardId(92);
#[doc = "random-93: Random guards (random.md:94)."]
pub const RANDOM_93: HazardId = HazardId(93);
#[doc = "random-94: Random guards (random.md:95)."]
pub const RANDOM_94: HazardId = HazardId(94);
#[doc = "random-95: Random guards (random.md:96)."]
pub const RANDOM_95: HazardId = HazardId(95);
#[doc = "random-96: Random guards (random.md:97)."]
pub const RANDOM_96: HazardId = HazardId(96);
#[doc = "random-97: Random guards (random.md:98)."]
pub const RANDOM_97: HazardId = HazardId(97);
#[doc = "random-98: Random guards (random.md:99)."]
pub const RANDOM_98: HazardId = HazardId(98);
#[doc = "random-99: Random guards (random.md:100)."]
pub const RANDOM_99: HazardId = HazardId(99);
#[doc = "random-100: Random guards (random.md:101)."]
pub const RANDOM_100: HazardId = HazardId(100);
#[doc = "random-101: Random guards (random.md:102)."]
pub const RANDOM_101: HazardId = HazardId(101);
#[doc = "random-102: Random guards (random.md:103)."]
pub const RANDOM_102: HazardId = HazardId(102);
#[doc = "random-103: Random guards (random.md:104)."]
pub const RANDOM_103: HazardId = HazardId(103);
#[doc = "random-104: Random guards (random.md:105)."]
pub const RANDOM_104: HazardId = HazardId(104);
#[doc = "random-105: Random guards (random.md:106)."]
pub const RANDOM_105: HazardId = HazardId(105);
#[doc = "random-106: Random guards (random.md:107)."]
pub const RANDOM_106: HazardId = HazardId(106);
#[doc = "random-107: Random guards (random.md:108)."]
pub const RANDOM_107: HazardId = HazardId(107);
#[doc = "random-108: Random guards (random.md:109)."]
pub const RANDOM_108: HazardId = HazardId(108);
#[doc = "random-109: Random guards (random.md:110)."]
pub const RANDOM_109: HazardId = HazardId(109);
#[doc = "random-110: Random guards (random.md:111)."]
pub const RANDOM_110: HazardId = HazardId(110);
#[doc = "random-111: Random guards (random.md:112)."]
pub const RANDOM_111: HazardId = HazardId(111);
#[doc = "random-112: Random guards (random.md:113)."]
pub const RANDOM_112: HazardId = HazardId(112);
#[doc = "random-113: Random guards (random.md:114)."]
pub const RANDOM_113: HazardId = HazardId(113);
#[doc = "random-114: Random guards (random.md:115)."]
pub const RANDOM_114: HazardId = HazardId(114);
#[doc = "random-115: Random guards (random.md:116)."]
pub const RANDOM_115: HazardId = HazardId(115);
#[doc = "random-116: Random guards (random.md:117)."]
pub const RANDOM_116: HazardId = HazardId(116);
#[doc = "random-117: Random guards (random.md:118)."]
pub const RANDOM_117: HazardId = HazardId(117);
#[doc = "random-118: Random guards (random.md:119)."]
pub const RANDOM_118: HazardId = HazardId(118);
#[doc = "random-119: Random guards (random.md:120)."]
pub const RANDOM_119: HazardId = HazardId(119);
#[doc = "random-120: Random guards (random.md:121)."]
pub const RANDOM_120: HazardId = HazardId(120);
#[doc = "random-121: Random guards (random.md:122)."]
pub const RANDOM_121: HazardId = HazardId(121);
#[doc = "random-122: Random guards (random.md:123)."]
pub const RANDOM_122: HazardId = HazardId(122);
#[doc = "random-123: Random guards (random.md:124)."]
pub const RANDOM_123: HazardId = HazardId(123);
#[doc = "random-124: Random guards (random.md:125)."]
pub const RANDOM_124: HazardId = HazardId(124);
#[doc = "random-125: Random guards (random.md:126)."]
pub const RANDOM_125: HazardId = HazardId(125);
#[doc = "random-126: Random guards (random.md:127)."]
pub const RANDOM_126: HazardId = HazardId(126);
#[doc = "random-127: Random guards (random.md:128)."]
pub const RANDOM_127: HazardId = HazardId(127);
#[doc = "random-128: Random guards (random.md:129)."]
pub const RANDOM_128: HazardId = HazardId(128);
#[doc = "random-129: Random guards (random.md:130)."]
pub const RANDOM_129: HazardId = HazardId(129);
#[doc = "random-130: Random guards (random.md:131)."]
pub const RANDOM_130: HazardId = HazardId(130);
#[doc = "random-131: Random guards (random.md:132)."]
pub const RANDOM_131: HazardId = HazardId(131);
#[doc = "random-132: Random guards (random.md:133)."]
pub const RANDOM_132: HazardId = HazardId(132);
#[doc = "random-133: Random guards (random.md:134)."]
pub const RANDOM_133: HazardId = HazardId(133);
#[doc = "random-134: Random guards (random.md:135)."]
pub const RANDOM_134: HazardId = HazardId(134);
#[doc = "random-135: Random guards (random.md:136)."]
pub const RANDOM_135: HazardId = HazardId(135);
#[doc = "random-136: Random guards (random.md:137)."]
pub const RANDOM_136: HazardId = HazardId(136);
#[doc = "random-137: Random guards (random.md:138)."]
pub const RANDOM_137: HazardId = HazardId(137);
#[doc = "random-138: Random guards (random.md:139)."]
pub const RANDOM_138: HazardId = HazardId(138);
#[doc = "random-139: Random guards (random.md:140)."]
pub const RANDOM_139: HazardId = HazardId(139);
#[doc = "random-140: Random guards (random.md:141)."]
pub const RANDOM_140: HazardId = HazardId(140);
#[doc = "random-141: Random guards (random.md:142)."]
pub const RANDOM_141: HazardId = HazardId(141);
#[doc = "random-142: Random guards (random.md:143)."]
pub const RANDOM_142: HazardId = HazardId(142);
#[doc = "random-143: Random guards (random.md:144)."]
pub const RANDOM_143: HazardId = HazardId(143);
#[doc = "random-144: Random guards (random.md:145)."]
pub const RANDOM_144: HazardId = HazardId(144);
#[doc = "random-145: Random guards (random.md:146)."]
pub const RANDOM_145: HazardId = HazardId(145);
#[doc = "random-146: Random guards (random.md:147)."]
pub const RANDOM_146: HazardId = HazardId(146);
#[doc = "random-147: Random guards (random.md:148)."]
pub const RANDOM_147: HazardId = HazardId(147);
#[doc = "random-148: Random guards (random.md:149)."]
pub const RANDOM_148: HazardId = HazardId(148);
#[doc = "random-149: Random guards (random.md:150)."]
pub const RANDOM_149: HazardId = HazardId(149);
#[doc = "random-150: Random guards (random.md:151)."]
pub const RANDOM_150: HazardId = HazardId(150);
#[doc = "random-151: Random guards (random.md:152)."]
pub const RANDOM_151: HazardId = HazardId(151);
#[doc = "random-152: Random guards (random.md:153)."]
pub const RANDOM_152: HazardId = HazardId(152);
#[doc = "random-153: Random guards (random.md:154)."]
pub const RANDOM_153: HazardId = HazardId(153);
#[doc = "random-154: Random guards (random.md:155)."]
pub const RANDOM_154: HazardId = HazardId(154);
#[doc = "random-155: Random guards (random.md:156)."]
pub const RANDOM_155: HazardId = HazardId(155);
#[doc = "random-156: Random guards (random.md:157)."]
pub const RANDOM_156: HazardId = HazardId(156);
#[doc = "random-157: Random guards (random.md:158)."]
pub const RANDOM_157: HazardId = HazardId(157);
#[doc = "random-158: Random guards (random.md:159)."]
pub const RANDOM_158: HazardId = HazardId(158);
#[doc = "random-159: Random guards (random.md:160)."]
pub const RANDOM_159: HazardId = HazardId(159);
#[doc = "random-160: Random guards (random.md:161)."]
pub const RANDOM_160: HazardId = HazardId(160);
#[doc = "random-161: Random guards (random.md:162)."]
pub const RANDOM_161: HazardId = HazardId(161);
#[doc = "random-162: Random guards (random.md:163)."]
pub const RANDOM_162: HazardId = HazardId(162);
#[doc = "random-163: Random guards (random.md:164)."]
pub const RANDOM_163: HazardId = HazardId(163);
#[doc = "random-164: Random guards (random.md:165)."]
pub const RANDOM_164: HazardId = HazardId(164);
#[doc = "random-165: Random guards (random.md:166)."]
pub const RANDOM_165: HazardId = HazardId(165);
#[doc = "random-166: Random guards (random.md:167)."]
pub const RANDOM_166: HazardId = HazardId(166);
#[doc = "random-167: Random guards (random.md:168)."]
pub const RANDOM_167: HazardId = HazardId(167);
#[doc = "random-168: Random guards (random.md:169)."]
pub const RANDOM_168: HazardId = HazardId(168);
#[doc = "random-169: Random guards (random.md:170)."]
pub const RANDOM_169: HazardId = HazardId(169);
#[doc = "random-170: Random guards (random.md:171)."]
pub const RANDOM_170: HazardId = HazardId(170);
#[doc = "random-171: Random guards (random.md:172)."]
pub const RANDOM_171: HazardId = HazardId(171);
#[doc = "random-172: Random guards (random.md:173)."]
pub const RANDOM_172: HazardId = HazardId(172);
#[doc = "random-173: Random guards (random.md:174)."]
pub const RANDOM_173: HazardId = HazardId(173);
#[doc = "random-174: Random guards (random.md:175)."]
pub const RANDOM_174: HazardId = HazardId(174);
#[doc = "random-175: Random guards (random.md:176)."]
pub const RANDOM_175: HazardId = HazardId(175);
#[doc = "random-176: Random guards (random.md:177)."]
pub const RANDOM_176: HazardId = HazardId(176);
#[doc = "random-177: Random guards (random.md:178)."]
pub const RANDOM_177: HazardId = HazardId(177);
#[doc = "random-178: Random guards (random.md:179)."]
pub const RANDOM_178: HazardId = HazardId(178);
#[doc = "random-179: Random guards (random.md:180)."]
pub const RANDOM_179: HazardId = HazardId(179);
#[doc = "random-180: Random guards (random.md:181)."]
pub const RANDOM_180: HazardId = HazardId(180);
#[doc = "random-181: Random guards (random.md:182)."]
pub const RANDOM_181: HazardId = HazardId(181);
#[doc = "random-182: Random guards (random.md:183)."]
pub const RANDOM_182: HazardId = HazardId(182);
#[doc = "random-183: Random guards (random.md:184)."]
pub const RANDOM_183: HazardId = HazardId(183);
#[doc = "random-184: Random guards (random.md:185)."]
pub const RANDOM_184: HazardId = HazardId(184);
#[doc = "random-185: Random guards (random.md:186)."]
pub const RANDOM_185: HazardId = HazardId(185);
#[doc = "random-186: Random guards (random.md:187)."]
pub const RANDOM_186: HazardId = HazardId(186);
#[doc = "random-187: Random guards (random.md:188)."]
pub const RANDOM_187: HazardId = HazardId(187);
#[doc = "random-188: Random guards (random.md:189)."]
pub const RANDOM_188: HazardId = HazardId(188);
#[doc = "random-189: Random guards (random.md:190)."]
pub const RANDOM_189: HazardId = HazardId(189);
#[doc = "random-190: Random guards (random.md:191)."]
pub const RANDOM_190: HazardId = HazardId(190);
#[doc = "random-191: Random guards (random.md:192)."]
pub const RANDOM_191: HazardId = HazardId(191);
#[doc = "random-192: Random guards (random.md:193)."]
pub const RANDOM_192: HazardId = HazardId(192);
#[doc = "random-193: Random guards (random.md:194)."]
pub const RANDOM_193: HazardId = HazardId(193);
#[doc = "random-194: Random guards (random.md:195)."]
pub const RANDOM_194: HazardId = HazardId(194);
#[doc = "random-195: Random guards (random.md:196)."]
pub const RANDOM_195: HazardId = HazardId(195);
#[doc = "random-196: Random guards (random.md:197)."]
pub const RANDOM_196: HazardId = HazardId(196);
#[doc = "random-197: Random guards (random.md:198)."]
pub const RANDOM_197: HazardId = HazardId(197);
#[doc = "random-198: Random guards (random.md:199)."]
pub const RANDOM_198: HazardId = HazardId(198);
#[doc = "random-199: Random guards (random.md:200)."]
pub const RANDOM_199: HazardId = HazardId(199);
#[doc = "random-200: Random guards (random.md:201)."]
pub const RANDOM_200: HazardId = HazardId(200);
#[doc = "random-201: Random guards (random.md:202)."]
pub const RANDOM_201: HazardId = HazardId(201);
#[doc = "random-202: Random guards (random.md:203)."]
pub const RANDOM_202: HazardId = HazardId(202);
#[doc = "random-203: Random guards (random.md:204)."]
pub const RANDOM_203: HazardId = HazardId(203);
#[doc = "random-204: Random guards (random.md:205)."]
pub const RANDOM_204: HazardId = HazardId(204);
#[doc = "random-205: Random guards (random.md:206)."]
pub const RANDOM_205: HazardId = HazardId(205);
#[doc = "random-206: Random guards (random.md:207)."]
pub const RANDOM_206: HazardId = HazardId(206);
#[doc = "random-207: Random guards (random.md:208)."]
pub const RANDOM_207: HazardId = HazardId(207);
#[doc = "random-208: Random guards (random.md:209)."]
pub const RANDOM_208: HazardId = HazardId(208);
#[doc = "random-209: Random guards (random.md:210)."]
pub const RANDOM_209: HazardId = HazardId(209);
#[doc = "random-210: Random guards (random.md:211)."]
pub const RANDOM_210: HazardId = HazardId(210);
#[doc = "random-211: Random guards (random.md:212)."]
pub const RANDOM_211: HazardId = HazardId(211);
#[doc = "random-212: Random guards (random.md:213)."]
pub const RANDOM_212: HazardId = HazardId(212);
#[doc = "random-213: Random guards (random.md:214)."]
pub const RANDOM_213: HazardId = HazardId(213);
#[doc = "random-214: Random guards (random.md:215)."]
pub const RANDOM_214: HazardId = HazardId(214);
#[doc = "random-215: Random guards (random.md:216)."]
pub const RANDOM_215: HazardId = HazardId(215);
#[doc = "random-216: Random guards (random.md:217)."]
pub const RANDOM_216: HazardId = HazardId(216);
#[doc = "random-217: Random guards (random.md:218)."]
pub const RANDOM_217: HazardId = HazardId(217);
#[doc = "random-218: Random guards (random.md:219)."]
pub const RANDOM_218: HazardId = HazardId(218);
#[doc = "random-219: Random guards (random.md:220)."]
pub const RANDOM_219: HazardId = HazardId(219);
#[doc = "random-220: Random guards (random.md:221)."]
pub const RANDOM_220: HazardId = HazardId(220);
#[doc = "random-221: Random guards (random.md:222)."]
pub const RANDOM_221: HazardId = HazardId(221);
#[doc = "random-222: Random guards (random.md:223)."]
pub const RANDOM_222: HazardId = HazardId(222);
#[doc = "random-223: Random guards (random.md:224)."]
pub const RANDOM_223: HazardId = HazardId(223);
#[doc = "random-224: Random guards (random.md:225)."]
pub const RANDOM_224: HazardId = HazardId(224);
#[doc = "random-225: Random guards (random.md:226)."]
pub const RANDOM_225: HazardId = HazardId(225);
#[doc = "random-226: Random guards (random.md:227)."]
pub const RANDOM_226: HazardId = HazardId(226);
#[doc = "random-227: Random guards (random.md:228)."]
pub const RANDOM_227: HazardId = HazardId(227);
#[doc = "random-228: Random guards (random.md:229)."]
pub const RANDOM_228: HazardId = HazardId(228);
#[doc = "random-229: Random guards (random.md:230)."]
pub const RANDOM_229: HazardId = HazardId(229);
#[doc = "random-230: Random guards (random.md:231)."]
pub const RANDOM_230: HazardId = HazardId(230);
#[doc = "random-231: Random guards (random.md:232)."]
pub const RANDOM_231: HazardId = HazardId(231);
#[doc = "random-232: Random guards (random.md:233)."]
pub const RANDOM_232: HazardId = HazardId(232);
#[doc = "random-233: Random guards (random.md:234)."]
pub const RANDOM_233: HazardId = HazardId(233);
#[doc = "random-234: Random guards (random.md:235)."]
pub const RANDOM_234: HazardId = HazardId(234);
#[doc = "random-235: Random guards (random.md:236)."]
pub const RANDOM_235: HazardId = HazardId(235);
#[doc = "random-236: Random guards (random.md:237)."]
pub const RANDOM_236: HazardId = HazardId(236);
#[doc = "random-237: Random guards (random.md:238)."]
pub const RANDOM_237: HazardId = HazardId(237);
#[doc = "random-238: Random guards (random.md:239)."]
pub const RANDOM_238: HazardId = HazardId(238);
#[doc = "random-239: Random guards (random.md:240)."]
pub const RANDOM_239: HazardId = HazardId(239);

/// The guards of the hazards as functions, and all of them as look-ups; asks the same questions as a reference to the
/// rulebook.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Guards;

impl ::oxyfolio::guard::Evaluator<'static> for Guards {
    type Rules = &'static ::oxyfolio::book::Tables;

    fn book(&self) -> &'static ::oxyfolio::book::Rulebook {
        &RULEBOOK
    }

    fn rules(&self) -> &'static ::oxyfolio::book::Tables {
        &TABLES
    }

    fn evaluate(&self, hazard: HazardId, seen: &Observed<'_>) -> Truth {
        match hazard {
            RANDOM_0 => never_random_0(seen),
            RANDOM_1 => never_random_1(seen),
            RANDOM_2 => never_random_2(seen),
            RANDOM_3 => never_random_3(seen),
            RANDOM_4 => never_random_4(seen),
            RANDOM_5 => never_random_5(seen),
            RANDOM_6 => never_random_6(seen),
            RANDOM_7 => never_random_7(seen),
            RANDOM_8 => never_random_8(seen),
            RANDOM_9 => never_random_9(seen),
            RANDOM_10 => never_random_10(seen),
            RANDOM_11 => never_random_11(seen),
            RANDOM_12 => never_random_12(seen),
            RANDOM_13 => never_random_13(seen),
            RANDOM_14 => never_random_14(seen),
            RANDOM_15 => never_random_15(seen),
            RANDOM_16 => never_random_16(seen),
            RANDOM_17 => never_random_17(seen),
            RANDOM_18 => never_random_18(seen),
            RANDOM_19 => never_random_19(seen),
            RANDOM_20 => never_random_20(seen),
            RANDOM_21 => never_random_21(seen),
            RANDOM_22 => never_random_22(seen),
            RANDOM_23 => never_random_23(seen),
            RANDOM_24 => never_random_24(seen),
            RANDOM_25 => never_random_25(seen),
            RANDOM_26 => never_random_26(seen),
            RANDOM_27 => never_random_27(seen),
            RANDOM_28 => never_random_28(seen),
            RANDOM_29 => never_random_29(seen),
            RANDOM_30 => never_random_30(seen),
            RANDOM_31 => never_random_31(seen),
            RANDOM_32 => never_random_32(seen),
            RANDOM_33 => never_random_33(seen),
            RANDOM_34 => never_random_34(seen),
            RANDOM_35 => never_random_35(seen),
            RANDOM_36 => never_random_36(seen),
            RANDOM_37 => never_random_37(seen),
            RANDOM_38 => never_random_38(seen),
            RANDOM_39 => never_random_39(seen),
            RANDOM_40 => never_random_40(seen),
            RANDOM_41 => never_random_41(seen),
            RANDOM_42 => never_random_42(seen),
            RANDOM_43 => never_random_43(seen),
            RANDOM_44 => never_random_44(seen),
            RANDOM_45 => never_random_45(seen),
            RANDOM_46 => never_random_46(seen),
            RANDOM_47 => never_random_47(seen),
            RANDOM_48 => never_random_48(seen),
            RANDOM_49 => never_random_49(seen),
            RANDOM_50 => never_random_50(seen),
            RANDOM_51 => never_random_51(seen),
            RANDOM_52 => never_random_52(seen),
            RANDOM_53 => never_random_53(seen),
            RANDOM_54 => never_random_54(seen),
            RANDOM_55 => never_random_55(seen),
            RANDOM_56 => never_random_56(seen),
            RANDOM_57 => never_random_57(seen),
            RANDOM_58 => never_random_58(seen),
            RANDOM_59 => never_random_59(seen),
            RANDOM_60 => never_random_60(seen),
            RANDOM_61 => never_random_61(seen),
            RANDOM_62 => never_random_62(seen),
            RANDOM_63 => never_random_63(seen),
            RANDOM_64 => never_random_64(seen),
            RANDOM_65 => never_random_65(seen),
            RANDOM_66 => never_random_66(seen),
            RANDOM_67 => never_random_67(seen),
            RANDOM_68 => never_random_68(seen),
            RANDOM_69 => never_random_69(seen),
            RANDOM_70 => never_random_70(seen),
            RANDOM_71 => never_random_71(seen),
            RANDOM_72 => never_random_72(seen),
            RANDOM_73 => never_random_73(seen),
            RANDOM_74 => never_random_74(seen),
            RANDOM_75 => never_random_75(seen),
            RANDOM_76 => never_random_76(seen),
            RANDOM_77 => never_random_77(seen),
            RANDOM_78 => never_random_78(seen),
            RANDOM_79 => never_random_79(seen),
            RANDOM_80 => never_random_80(seen),
            RANDOM_81 => never_random_81(seen),
            RANDOM_82 => never_random_82(seen),
            RANDOM_83 => never_random_83(seen),
            RANDOM_84 => never_random_84(seen),
            RANDOM_85 => never_random_85(seen),
            RANDOM_86 => never_random_86(seen),
            RANDOM_87 => never_random_87(seen),
            RANDOM_88 => never_random_88(seen),
            RANDOM_89 => never_random_89(seen),
            RANDOM_90 => never_random_90(seen),
            RANDOM_91 => never_random_91(seen),
            RANDOM_92 => never_random_92(seen),
            RANDOM_93 => never_random_93(seen),
            RANDOM_94 => never_random_94(seen),
            RANDOM_95 => never_random_95(seen),
            RANDOM_96 => never_random_96(seen),
            RANDOM_97 => never_random_97(seen),
            RANDOM_98 => never_random_98(seen),
            RANDOM_99 => never_random_99(seen),
            RANDOM_100 => never_random_100(seen),
            RANDOM_101 => never_random_101(seen),
            RANDOM_102 => never_random_102(seen),
            RANDOM_103 => never_random_103(seen),
            RANDOM_104 => never_random_104(seen),
            RANDOM_105 => never_random_105(seen),
            RANDOM_106 => never_random_106(seen),
            RANDOM_107 => never_random_107(seen),
            RANDOM_108 => never_random_108(seen),
            RANDOM_109 => never_random_109(seen),
            RANDOM_110 => never_random_110(seen),
            RANDOM_111 => never_random_111(seen),
            RANDOM_112 => never_random_112(seen),
            RANDOM_113 => never_random_113(seen),
            RANDOM_114 => never_random_114(seen),
            RANDOM_115 => never_random_115(seen),
            RANDOM_116 => never_random_116(seen),
            RANDOM_117 => never_random_117(seen),
            RANDOM_118 => never_random_118(seen),
            RANDOM_119 => never_random_119(seen),
            RANDOM_120 => never_random_120(seen),
            RANDOM_121 => never_random_121(seen),
            RANDOM_122 => never_random_122(seen),
            RANDOM_123 => never_random_123(seen),
            RANDOM_124 => never_random_124(seen),
            RANDOM_125 => never_random_125(seen),
            RANDOM_126 => never_random_126(seen),
            RANDOM_127 => never_random_127(seen),
            RANDOM_128 => never_random_128(seen),
            RANDOM_129 => never_random_129(seen),
            RANDOM_130 => never_random_130(seen),
            RANDOM_131 => never_random_131(seen),
            RANDOM_132 => never_random_132(seen),
            RANDOM_133 => never_random_133(seen),
            RANDOM_134 => never_random_134(seen),
            RANDOM_135 => never_random_135(seen),
            RANDOM_136 => never_random_136(seen),
            RANDOM_137 => never_random_137(seen),
            RANDOM_138 => never_random_138(seen),
            RANDOM_139 => never_random_139(seen),
            RANDOM_140 => never_random_140(seen),
            RANDOM_141 => never_random_141(seen),
            RANDOM_142 => never_random_142(seen),
            RANDOM_143 => never_random_143(seen),
            RANDOM_144 => never_random_144(seen),
            RANDOM_145 => never_random_145(seen),
            RANDOM_146 => never_random_146(seen),
            RANDOM_147 => never_random_147(seen),
            RANDOM_148 => never_random_148(seen),
            RANDOM_149 => never_random_149(seen),
            RANDOM_150 => never_random_150(seen),
            RANDOM_151 => never_random_151(seen),
            RANDOM_152 => never_random_152(seen),
            RANDOM_153 => never_random_153(seen),
            RANDOM_154 => never_random_154(seen),
            RANDOM_155 => never_random_155(seen),
            RANDOM_156 => never_random_156(seen),
            RANDOM_157 => never_random_157(seen),
            RANDOM_158 => never_random_158(seen),
            RANDOM_159 => never_random_159(seen),
            RANDOM_160 => never_random_160(seen),
            RANDOM_161 => never_random_161(seen),
            RANDOM_162 => never_random_162(seen),
            RANDOM_163 => never_random_163(seen),
            RANDOM_164 => never_random_164(seen),
            RANDOM_165 => never_random_165(seen),
            RANDOM_166 => never_random_166(seen),
            RANDOM_167 => never_random_167(seen),
            RANDOM_168 => never_random_168(seen),
            RANDOM_169 => never_random_169(seen),
            RANDOM_170 => never_random_170(seen),
            RANDOM_171 => never_random_171(seen),
            RANDOM_172 => never_random_172(seen),
            RANDOM_173 => never_random_173(seen),
            RANDOM_174 => never_random_174(seen),
            RANDOM_175 => never_random_175(seen),
            RANDOM_176 => never_random_176(seen),
            RANDOM_177 => never_random_177(seen),
            RANDOM_178 => never_random_178(seen),
            RANDOM_179 => never_random_179(seen),
            RANDOM_180 => never_random_180(seen),
            RANDOM_181 => never_random_181(seen),
            RANDOM_182 => never_random_182(seen),
            RANDOM_183 => never_random_183(seen),
            RANDOM_184 => never_random_184(seen),
            RANDOM_185 => never_random_185(seen),
            RANDOM_186 => never_random_186(seen),
            RANDOM_187 => never_random_187(seen),
            RANDOM_188 => never_random_188(seen),
            RANDOM_189 => never_random_189(seen),
            RANDOM_190 => never_random_190(seen),
            RANDOM_191 => never_random_191(seen),
            RANDOM_192 => never_random_192(seen),
            RANDOM_193 => never_random_193(seen),
            RANDOM_194 => never_random_194(seen),
            RANDOM_195 => never_random_195(seen),
            RANDOM_196 => never_random_196(seen),
            RANDOM_197 => never_random_197(seen),
            RANDOM_198 => never_random_198(seen),
            RANDOM_199 => never_random_199(seen),
            RANDOM_200 => never_random_200(seen),
            RANDOM_201 => never_random_201(seen),
            RANDOM_202 => never_random_202(seen),
            RANDOM_203 => never_random_203(seen),
            RANDOM_204 => never_random_204(seen),
            RANDOM_205 => never_random_205(seen),
            RANDOM_206 => never_random_206(seen),
            RANDOM_207 => never_random_207(seen),
            RANDOM_208 => never_random_208(seen),
            RANDOM_209 => never_random_209(seen),
            RANDOM_210 => never_random_210(seen),
            RANDOM_211 => never_random_211(seen),
            RANDOM_212 => never_random_212(seen),
            RANDOM_213 => never_random_213(seen),
            RANDOM_214 => never_random_214(seen),
            RANDOM_215 => never_random_215(seen),
            RANDOM_216 => never_random_216(seen),
            RANDOM_217 => never_random_217(seen),
            RANDOM_218 => never_random_218(seen),
            RANDOM_219 => never_random_219(seen),
            RANDOM_220 => never_random_220(seen),
            RANDOM_221 => never_random_221(seen),
            RANDOM_222 => never_random_222(seen),
            RANDOM_223 => never_random_223(seen),
            RANDOM_224 => never_random_224(seen),
            RANDOM_225 => never_random_225(seen),
            RANDOM_226 => never_random_226(seen),
            RANDOM_227 => never_random_227(seen),
            RANDOM_228 => never_random_228(seen),
            RANDOM_229 => never_random_229(seen),
            RANDOM_230 => never_random_230(seen),
            RANDOM_231 => never_random_231(seen),
            RANDOM_232 => never_random_232(seen),
            RANDOM_233 => never_random_233(seen),
            RANDOM_234 => never_random_234(seen),
            RANDOM_235 => never_random_235(seen),
            RANDOM_236 => never_random_236(seen),
            RANDOM_237 => never_random_237(seen),
            RANDOM_238 => never_random_238(seen),
            RANDOM_239 => never_random_239(seen),
            _ => Truth::Unknown,
        }
    }

    fn broken(&self, seen: &Observed<'_>) -> Broken {
        walked(looked_up(&Row::from(seen)), seen)
    }

    fn broken_row(&self, row: &Row) -> Broken {
        row.observed(|seen| walked(looked_up(row), seen))
    }
}

/// All guards at once. The lowest bits of a page are its hazards in their order, those above are parts of their guards.
#[inline]
fn looked_up(row: &Row) -> Broken {
    Broken::default()
        .with_page(0, 36, page_0(row))
        .with_page(36, 32, page_1(row))
        .with_page(68, 32, page_2(row))
        .with_page(100, 36, page_3(row))
        .with_page(136, 33, page_4(row))
        .with_page(169, 33, page_5(row))
        .with_page(202, 32, page_6(row))
        .with_page(234, 6, page_7(row))
}

#[inline]
fn page_0(row: &Row) -> Doubt {
    // flow: not known, then from each of these numbers of L/min on.
    const FLOW_STEPS: [f64; 5] = [f64::MIN, 4.000000004, 5.999999994, 6.0000000060000005, 12.000000012000001];
    static FLOW: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x2211020000000, 0x0),
        Doubt::new(0x2211020000000, 0x2211020000000),
        Doubt::new(0x211020000000, 0x211020000000),
        Doubt::new(0x201020000000, 0x201020000000),
        Doubt::new(0x201000000000, 0x201000000000),
        Doubt::new(0x11000000000, 0x11000000000),
    ]);
    // pressure: not known, then from each of these numbers of pascals on.
    const PRESSURE_STEPS: [f64; 9] = [f64::MIN, 3447378.6431368017, 3447378.650031559, 4999999.995, 5000000.005000001, 9999999.99, 10000000.010000002, 13699999.9863, 13700000.013700001];
    static PRESSURE: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x300e400000828210, 0x0),
        Doubt::new(0x2000400000820000, 0x2000400000820000),
        Doubt::new(0x2006400000820000, 0x2006400000820000),
        Doubt::new(0x2000400000820000, 0x2000400000820000),
        Doubt::new(0x2008400000820010, 0x2008400000820010),
        Doubt::new(0x2008400000800210, 0x2008400000800210),
        Doubt::new(0x3008400000800210, 0x3008400000800210),
        Doubt::new(0x8400000808210, 0x8400000808210),
        Doubt::new(0x8400000008210, 0x8400000008210),
        Doubt::new(0x8200, 0x8200),
    ]);
    // temperature: not known, then from each of these numbers of °C on.
    const TEMPERATURE_STEPS: [f64; 8] = [f64::MIN, -20.000000019999998, -19.99999998, -10.000000009999999, 0.0, 9.999999990000001, 10.00000001, 40.00000004];
    static TEMPERATURE: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x862e44002008008, 0x0),
        Doubt::new(0x60004000008008, 0x60004000008008),
        Doubt::new(0x40004000008008, 0x40004000008008),
        Doubt::new(0x60004000008000, 0x60004000008000),
        Doubt::new(0x60444002000000, 0x60444002000000),
        Doubt::new(0x60644002000000, 0x60644002000000),
        Doubt::new(0x820e40002000000, 0x820e40002000000),
        Doubt::new(0x20e40002000000, 0x20e40002000000),
        Doubt::new(0x62640002000000, 0x62640002000000),
    ]);
    // spo2: not known, then from each of these numbers of percent on.
    const SPO2_STEPS: [f64; 5] = [f64::MIN, 0.0, 84.999999915, 87.999999912, 88.00000008800001];
    static SPO2: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x5100080100020000, 0x0),
        Doubt::new(0x100000000, 0x100000000),
        Doubt::new(0x100020000, 0x100020000),
        Doubt::new(0x1000000100020000, 0x1000000100020000),
        Doubt::new(0x5000000100020000, 0x5000000100020000),
        Doubt::new(0x5100080000000000, 0x5100080000000000),
    ]);
    // minutes left: not known, then from each of these numbers of minutes on.
    const MINUTES_LEFT_STEPS: [f64; 7] = [f64::MIN, 1.4999999985, 1.5000000015000001, 9.999999990000001, 10.00000001, 119.99999988, 120.00000012000001];
    static MINUTES_LEFT: [Doubt; 8] = [
        Doubt::new(0x1001048012000040, 0x0),
        Doubt::new(0x1001048010000040, 0x1001048010000040),
        Doubt::new(0x1048012000040, 0x1048012000040),
        Doubt::new(0x1008012000040, 0x1008012000040),
        Doubt::new(0x8012000000, 0x8012000000),
        Doubt::new(0x8002000000, 0x8002000000),
        Doubt::new(0x2000000, 0x2000000),
        Doubt::new(0x1000002000000, 0x1000002000000),
    ];
    // minutes wanted: not known, then from each of these numbers of minutes on.
    const MINUTES_WANTED_STEPS: [f64; 7] = [f64::MIN, 0.0, 5e-324, 1.4999999985, 9.999999990000001, 89.99999991000001, 120.00000012000001];
    static MINUTES_WANTED: [Doubt; 8] = [
        Doubt::new(0x30082000000008, 0x0),
        Doubt::new(0x10080000000008, 0x10080000000008),
        Doubt::new(0x30080000000008, 0x30080000000008),
        Doubt::new(0x10080000000008, 0x10080000000008),
        Doubt::new(0x10000000000008, 0x10000000000008),
        Doubt::new(0x10002000000008, 0x10002000000008),
        Doubt::new(0x10002000000000, 0x10002000000000),
        Doubt::new(0x2000000000, 0x2000000000),
    ];
    static FACTS_0: ByThree = by_three([
        Sign::new(0x400000000000000, 0x0), // device on patient
        Sign::new(0x0, 0x0),
        Sign::new(0x4000020000000, 0x8), // reservoir filled
    ]);
    static FACTS_3: ByThree = by_three([
        Sign::new(0x40000200000000, 0x100000000000), // cylinder open
        Sign::new(0x10000000000, 0x108000000000000), // cylinder secured
        Sign::new(0x20000000800, 0x0), // cylinder laid down
    ]);
    static FACTS_6: ByThree = by_three([
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x20000000000000), // outlet clear
        Sign::new(0x0, 0x80000000000000), // washer fitted
    ]);
    static FACTS_9: ByThree = by_three([
        Sign::new(0x2000000000000000, 0x0), // regulator seated
        Sign::new(0x0, 0x0),
        Sign::new(0x8000000020, 0x0), // flame near
    ]);
    static FACTS_12: ByThree = by_three([
        Sign::new(0x400004000000000, 0x0), // grease near
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x0),
    ]);
    static CONDITIONS_0: ByThree = by_three([
        Sign::new(0x2000010000, 0x80000000000000), // retains-gas
        Sign::new(0x0, 0x8000000000000), // wheezes
        Sign::new(0x0, 0x0),
    ]);
    // Not known, each of the book, and one of another book.
    static DEVICES: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x4810920110200020, 0x0),
        Doubt::new(0x4810120110000020, 0x4810120110000020),
        Doubt::new(0x810100010200020, 0x810100010200020),
        Doubt::new(0x4810920100000000, 0x4810920100000000),
        Doubt::new(0x4010020110000020, 0x4010020110000020),
        Doubt::new(0x4810120110000020, 0x4810120110000020),
    ]);
    // Not known, each of the book, and one of another book.
    static GROUPS: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x200000012400200, 0x0),
        Doubt::new(0x2000000, 0x2000000),
        Doubt::new(0x200000010400200, 0x200000010400200),
        Doubt::new(0x200000010400200, 0x200000010400200),
        Doubt::new(0x200000010400200, 0x200000010400200),
    ]);
    // Not known, yes, no.
    static PAIR_0: [Doubt; 4] = [
        Doubt::new(0x8000000000, 0x0),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x8000000000, 0x8000000000),
        Doubt::new(0x0, 0x0),
    ];
    // Not known, yes, no.
    static PAIR_1: [Doubt; 4] = [
        Doubt::new(0x80, 0x0),
        Doubt::new(0x80, 0x80),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    // Not known, yes, no.
    static PAIR_2: [Doubt; 4] = [
        Doubt::new(0x400000000000, 0x0),
        Doubt::new(0x400000000000, 0x400000000000),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    // Not known, yes, no.
    static PAIR_3: [Doubt; 4] = [
        Doubt::new(0x4000000, 0x0),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x4000000, 0x4000000),
        Doubt::new(0x0, 0x0),
    ];
    // flow greater than the device's greatest flow: where the answer becomes unknown, and where it is known again.
    static LIMIT_0_STEPS: [[f64; 2]; 16] = padded([0.0; 2], &[
        [-f64::INFINITY, f64::INFINITY],
        [1.000000001, 6.0000000060000005],
        [1.000000001, 1.000000001],
        [4.000000004, 4.000000004],
        [6.0000000060000005, 6.0000000060000005],
        [10.00000001, 10.00000001],
        [8.000000008, 15.000000015000001],
        [8.000000008, 8.000000008],
        [15.000000015000001, 15.000000015000001],
        [12.000000012000001, 12.000000012000001],
    ]);
    // Which of them: a row for each device; in it the group not known, each group, and one of another book.
    static LIMIT_0_OF: [u16; 32] = padded(0, &[
        0, 0, 0, 0, 0, // no device of the book
        1, 2, 3, 4, 4, // cannula
        5, 5, 5, 5, 5, // mask
        6, 7, 8, 8, 8, // bag
        0, 0, 0, 9, 0, // blow-by
        0, 0, 0, 0, 0, // no device of the book
    ]);
    static LIMIT_0: [Doubt; 4] = [
        Doubt::new(0x2000000000000, 0x0),
        Doubt::new(0x2000000000000, 0x2000000000000),
        Doubt::new(0x2000000000000, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    // flow less than the device's least flow: where the answer becomes unknown, and where it is known again.
    static LIMIT_1_STEPS: [[f64; 2]; 16] = padded([0.0; 2], &[
        [-f64::INFINITY, f64::INFINITY],
        [0.4999999995, 0.999999999],
        [0.4999999995, 0.4999999995],
        [0.999999999, 0.999999999],
        [5.999999994, 5.999999994],
        [3.999999996, 9.999999990000001],
        [3.999999996, 3.999999996],
        [9.999999990000001, 9.999999990000001],
        [1.999999998, 1.999999998],
    ]);
    // Which of them: a row for each device; in it the group not known, each group, and one of another book.
    static LIMIT_1_OF: [u16; 32] = padded(0, &[
        0, 0, 0, 0, 0, // no device of the book
        1, 2, 3, 3, 3, // cannula
        4, 4, 4, 4, 4, // mask
        5, 6, 7, 7, 7, // bag
        8, 8, 8, 8, 8, // blow-by
        0, 0, 0, 0, 0, // no device of the book
    ]);
    static LIMIT_1: [Doubt; 4] = [
        Doubt::new(0x8000000000000, 0x0),
        Doubt::new(0x8000000000000, 0x8000000000000),
        Doubt::new(0x8000000000000, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    Doubt::new(0x5000, 0x5000)
        .and(pick(&FLOW, steps(row.number(Measure::Flow), &FLOW_STEPS)))
        .and(pick(&PRESSURE, steps(row.number(Measure::Pressure), &PRESSURE_STEPS)))
        .and(pick(&TEMPERATURE, steps(row.number(Measure::Temperature), &TEMPERATURE_STEPS)))
        .and(pick(&SPO2, steps(row.number(Measure::Spo2), &SPO2_STEPS)))
        .and(pick(&MINUTES_LEFT, steps(row.number(Measure::MinutesLeft), &MINUTES_LEFT_STEPS)))
        .and(pick(&MINUTES_WANTED, steps(row.number(Measure::MinutesWanted), &MINUTES_WANTED_STEPS)))
        .and(FACTS_0.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 0))
        .and(FACTS_3.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 3))
        .and(FACTS_6.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 6))
        .and(FACTS_9.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 9))
        .and(FACTS_12.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 12))
        .and(CONDITIONS_0.doubt(row.has(), row.has_not(), 0))
        .and(pick(&DEVICES, row.device_place(4)))
        .and(pick(&GROUPS, row.group_place(3)))
        .and(pick(&PAIR_0, answer(row.number(Measure::MinutesWanted), Comparison::Greater, row.number(Measure::MinutesLeft))))
        .and(pick(&PAIR_1, answer(row.number(Measure::Spo2), Comparison::Greater, row.target_low())))
        .and(pick(&PAIR_2, answer(row.number(Measure::MinutesWanted), Comparison::Equal, row.number(Measure::MinutesLeft))))
        .and(pick(&PAIR_3, answer(row.number(Measure::MinutesWanted), Comparison::Less, row.number(Measure::MinutesLeft))))
        .and(pick(&LIMIT_0, steps_between(row.number(Measure::Flow), pick(&LIMIT_0_STEPS, pick(&LIMIT_0_OF, row.device_place(4) * 5 + row.group_place(3)).into()))))
        .and(pick(&LIMIT_1, steps_between(row.number(Measure::Flow), pick(&LIMIT_1_STEPS, pick(&LIMIT_1_OF, row.device_place(4) * 5 + row.group_place(3)).into()))))
        .link(36, 37)
        .link(37, 0)
        .link(38, 1)
        .link(39, 2)
        .link(40, 4)
        .link(41, 42)
        .link(42, 8)
        .link(43, 9)
        .link(44, 10)
        .link(45, 11)
        .link(46, 13)
        .link(47, 48)
        .link(48, 18)
        .link(49, 19)
        .link(50, 51)
        .link(51, 20)
        .link(52, 24)
        .link(53, 26)
        .link(54, 27)
        .link(55, 28)
        .link(56, 57)
        .link(57, 58)
        .link(58, 30)
        .link(59, 31)
        .link(60, 32)
        .link(61, 34)
        .link(62, 35)
}

#[inline]
fn page_1(row: &Row) -> Doubt {
    // flow: not known, then from each of these numbers of L/min on.
    const FLOW_STEPS: [f64; 7] = [f64::MIN, 0.4999999995, 2.4999999975000002, 2.5000000025, 3.999999996, 11.999999988, 15.000000015000001];
    static FLOW: [Doubt; 8] = [
        Doubt::new(0x8100090c20000000, 0x0),
        Doubt::new(0x8000000800000000, 0x8000000800000000),
        Doubt::new(0x800000000, 0x800000000),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x800000000, 0x800000000),
        Doubt::new(0x100010c20000000, 0x100010c20000000),
        Doubt::new(0x100090c20000000, 0x100090c20000000),
        Doubt::new(0x100010c20000000, 0x100010c20000000),
    ];
    // pressure: not known, then from each of these numbers of pascals on.
    const PRESSURE_STEPS: [f64; 9] = [f64::MIN, 3447378.6431368017, 3447378.650031559, 4999999.995, 5000000.005000001, 9999999.99, 10000000.010000002, 13699999.9863, 13700000.013700001];
    static PRESSURE: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x500044620200c02, 0x0),
        Doubt::new(0x400040000000000, 0x400040000000000),
        Doubt::new(0x400040200000400, 0x400040200000400),
        Doubt::new(0x400040000000400, 0x400040000000400),
        Doubt::new(0x500040000200400, 0x500040000200400),
        Doubt::new(0x400044000000402, 0x400044000000402),
        Doubt::new(0x400044400000402, 0x400044400000402),
        Doubt::new(0x44000000402, 0x44000000402),
        Doubt::new(0x44020000c02, 0x44020000c02),
        Doubt::new(0x4000000c02, 0x4000000c02),
    ]);
    // temperature: not known, then from each of these numbers of °C on.
    const TEMPERATURE_STEPS: [f64; 10] = [f64::MIN, -20.000000019999998, -19.99999998, -9.99999999, 0.0, 5e-324, 9.999999990000001, 10.00000001, 39.999999960000004, 40.00000004];
    static TEMPERATURE: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0xca620100488000, 0x0),
        Doubt::new(0x40400000080000, 0x40400000080000),
        Doubt::new(0x40400000480000, 0x40400000480000),
        Doubt::new(0x40420000480000, 0x40420000480000),
        Doubt::new(0x40420100480000, 0x40420100480000),
        Doubt::new(0x40420100488000, 0x40420100488000),
        Doubt::new(0x40420100088000, 0x40420100088000),
        Doubt::new(0x40620100008000, 0x40620100008000),
        Doubt::new(0x620100088000, 0x620100088000),
        Doubt::new(0x88220100088000, 0x88220100088000),
        Doubt::new(0x82020100088000, 0x82020100088000),
    ]);
    // spo2: not known, then from each of these numbers of percent on.
    const SPO2_STEPS: [f64; 7] = [f64::MIN, 87.999999912, 88.00000008800001, 91.999999908, 94.000000094, 98.000000098, 99.9999999];
    static SPO2: [Doubt; 8] = [
        Doubt::new(0x8000000080009230, 0x0),
        Doubt::new(0x80009210, 0x80009210),
        Doubt::new(0x8000000080009210, 0x8000000080009210),
        Doubt::new(0x8000000080001010, 0x8000000080001010),
        Doubt::new(0x8000000000001010, 0x8000000000001010),
        Doubt::new(0x8000000000000010, 0x8000000000000010),
        Doubt::new(0x10, 0x10),
        Doubt::new(0x20, 0x20),
    ];
    // minutes left: not known, then from each of these numbers of minutes on.
    const MINUTES_LEFT_STEPS: [f64; 10] = [f64::MIN, 0.0, 9.999999990000001, 14.999999985, 15.000000015000001, 59.99999994, 60.000000060000005, 90.00000009, 119.99999988, 120.00000012000001];
    static MINUTES_LEFT: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x3280884400000012, 0x0),
        Doubt::new(0x280880000000002, 0x280880000000002),
        Doubt::new(0x1280880400000002, 0x1280880400000002),
        Doubt::new(0x3280080400000012, 0x3280080400000012),
        Doubt::new(0x3080084400000012, 0x3080084400000012),
        Doubt::new(0x3280084400000012, 0x3280084400000012),
        Doubt::new(0x3280004400000012, 0x3280004400000012),
        Doubt::new(0x3200004400000012, 0x3200004400000012),
        Doubt::new(0x3200004000000012, 0x3200004000000012),
        Doubt::new(0x3200004000000010, 0x3200004000000010),
        Doubt::new(0x1200804000000000, 0x1200804000000000),
    ]);
    // minutes wanted: not known, then from each of these numbers of minutes on.
    const MINUTES_WANTED_STEPS: [f64; 6] = [f64::MIN, 0.0, 5e-324, 10.00000001, 119.99999988, 120.00000012000001];
    static MINUTES_WANTED: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x580800a800000000, 0x0),
        Doubt::new(0x5808000000000000, 0x5808000000000000),
        Doubt::new(0x1808000000000000, 0x1808000000000000),
        Doubt::new(0x5808000800000000, 0x5808000800000000),
        Doubt::new(0x5808002800000000, 0x5808002800000000),
        Doubt::new(0x480000a800000000, 0x480000a800000000),
        Doubt::new(0x400000a800000000, 0x400000a800000000),
    ]);
    static FACTS_0: ByThree = by_three([
        Sign::new(0x100000000000, 0x0), // device on patient
        Sign::new(0x0, 0x0),
        Sign::new(0x20001000000000, 0x0), // reservoir filled
    ]);
    static FACTS_3: ByThree = by_three([
        Sign::new(0x1001000000000, 0x4000000000000000), // cylinder open
        Sign::new(0x0, 0x40000000000000), // cylinder secured
        Sign::new(0x0, 0x0),
    ]);
    static FACTS_6: ByThree = by_three([
        Sign::new(0x0, 0x0),
        Sign::new(0x400000000000, 0x0), // outlet clear
        Sign::new(0x0, 0x0),
    ]);
    static FACTS_9: ByThree = by_three([
        Sign::new(0x0, 0x0),
        Sign::new(0x2000000000000100, 0x0), // regulator pressurised
        Sign::new(0x0, 0x400), // flame near
    ]);
    static FACTS_12: ByThree = by_three([
        Sign::new(0x0, 0x4000000000000000), // grease near
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x0),
    ]);
    static CONDITIONS_0: ByThree = by_three([
        Sign::new(0x400000, 0x0), // retains-gas
        Sign::new(0x0, 0x80000000000000), // wheezes
        Sign::new(0x0, 0x0),
    ]);
    // Not known, each of the book, and one of another book.
    static DEVICES: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x8055992100008024, 0x0),
        Doubt::new(0x41082000008004, 0x41082000008004),
        Doubt::new(0x990000008024, 0x990000008024),
        Doubt::new(0x11900100008000, 0x11900100008000),
        Doubt::new(0x8005980000000004, 0x8005980000000004),
        Doubt::new(0x11980000008004, 0x1900000008000),
    ]);
    // Not known, each of the book, and one of another book.
    static GROUPS: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x612240400800001, 0x0),
        Doubt::new(0x600240000800001, 0x600240000800001),
        Doubt::new(0x412000000000001, 0x412000000000001),
        Doubt::new(0x200040400000000, 0x200040400000000),
        Doubt::new(0x600040000000001, 0x600040000000001),
    ]);
    // Not known, yes, no.
    static PAIR_0: [Doubt; 4] = [
        Doubt::new(0x8000000000, 0x0),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x8000000000, 0x8000000000),
        Doubt::new(0x0, 0x0),
    ];
    // Not known, yes, no.
    static PAIR_1: [Doubt; 4] = [
        Doubt::new(0x20000000000000, 0x0),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x20000000000000, 0x20000000000000),
        Doubt::new(0x0, 0x0),
    ];
    // flow less than the device's least flow: where the answer becomes unknown, and where it is known again.
    static LIMIT_0_STEPS: [[f64; 2]; 16] = padded([0.0; 2], &[
        [-f64::INFINITY, f64::INFINITY],
        [0.4999999995, 0.999999999],
        [0.4999999995, 0.4999999995],
        [0.999999999, 0.999999999],
        [5.999999994, 5.999999994],
        [3.999999996, 9.999999990000001],
        [3.999999996, 3.999999996],
        [9.999999990000001, 9.999999990000001],
        [1.999999998, 1.999999998],
    ]);
    // Which of them: a row for each device; in it the group not known, each group, and one of another book.
    static LIMIT_0_OF: [u16; 32] = padded(0, &[
        0, 0, 0, 0, 0, // no device of the book
        1, 2, 3, 3, 3, // cannula
        4, 4, 4, 4, 4, // mask
        5, 6, 7, 7, 7, // bag
        8, 8, 8, 8, 8, // blow-by
        0, 0, 0, 0, 0, // no device of the book
    ]);
    static LIMIT_0: [Doubt; 4] = [
        Doubt::new(0x10, 0x0),
        Doubt::new(0x10, 0x10),
        Doubt::new(0x10, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    // flow greater than the device's greatest flow: where the answer becomes unknown, and where it is known again.
    static LIMIT_1_STEPS: [[f64; 2]; 16] = padded([0.0; 2], &[
        [-f64::INFINITY, f64::INFINITY],
        [1.000000001, 6.0000000060000005],
        [1.000000001, 1.000000001],
        [4.000000004, 4.000000004],
        [6.0000000060000005, 6.0000000060000005],
        [10.00000001, 10.00000001],
        [8.000000008, 15.000000015000001],
        [8.000000008, 8.000000008],
        [15.000000015000001, 15.000000015000001],
        [12.000000012000001, 12.000000012000001],
    ]);
    // Which of them: a row for each device; in it the group not known, each group, and one of another book.
    static LIMIT_1_OF: [u16; 32] = padded(0, &[
        0, 0, 0, 0, 0, // no device of the book
        1, 2, 3, 4, 4, // cannula
        5, 5, 5, 5, 5, // mask
        6, 7, 8, 8, 8, // bag
        0, 0, 0, 9, 0, // blow-by
        0, 0, 0, 0, 0, // no device of the book
    ]);
    static LIMIT_1: [Doubt; 4] = [
        Doubt::new(0x20000000000, 0x0),
        Doubt::new(0x20000000000, 0x20000000000),
        Doubt::new(0x20000000000, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    // flow less than the device's greatest flow: where the answer becomes unknown, and where it is known again.
    static LIMIT_2_STEPS: [[f64; 2]; 16] = padded([0.0; 2], &[
        [-f64::INFINITY, f64::INFINITY],
        [0.999999999, 5.999999994],
        [0.999999999, 0.999999999],
        [3.999999996, 3.999999996],
        [5.999999994, 5.999999994],
        [9.999999990000001, 9.999999990000001],
        [7.999999992, 14.999999985],
        [7.999999992, 7.999999992],
        [14.999999985, 14.999999985],
        [11.999999988, 11.999999988],
    ]);
    // Which of them: a row for each device; in it the group not known, each group, and one of another book.
    static LIMIT_2_OF: [u16; 32] = padded(0, &[
        0, 0, 0, 0, 0, // no device of the book
        1, 2, 3, 4, 4, // cannula
        5, 5, 5, 5, 5, // mask
        6, 7, 8, 8, 8, // bag
        0, 0, 0, 9, 0, // blow-by
        0, 0, 0, 0, 0, // no device of the book
    ]);
    static LIMIT_2: [Doubt; 4] = [
        Doubt::new(0x800000000000000, 0x0),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x800000000000000, 0x0),
        Doubt::new(0x800000000000000, 0x800000000000000),
    ];
    Doubt::new(0x0, 0x0)
        .and(pick(&FLOW, steps(row.number(Measure::Flow), &FLOW_STEPS)))
        .and(pick(&PRESSURE, steps(row.number(Measure::Pressure), &PRESSURE_STEPS)))
        .and(pick(&TEMPERATURE, steps(row.number(Measure::Temperature), &TEMPERATURE_STEPS)))
        .and(pick(&SPO2, steps(row.number(Measure::Spo2), &SPO2_STEPS)))
        .and(pick(&MINUTES_LEFT, steps(row.number(Measure::MinutesLeft), &MINUTES_LEFT_STEPS)))
        .and(pick(&MINUTES_WANTED, steps(row.number(Measure::MinutesWanted), &MINUTES_WANTED_STEPS)))
        .and(FACTS_0.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 0))
        .and(FACTS_3.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 3))
        .and(FACTS_6.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 6))
        .and(FACTS_9.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 9))
        .and(FACTS_12.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 12))
        .and(CONDITIONS_0.doubt(row.has(), row.has_not(), 0))
        .and(pick(&DEVICES, row.device_place(4)))
        .and(pick(&GROUPS, row.group_place(3)))
        .and(pick(&PAIR_0, answer(row.number(Measure::MinutesWanted), Comparison::Less, row.number(Measure::MinutesLeft))))
        .and(pick(&PAIR_1, answer(row.number(Measure::MinutesLeft), Comparison::Greater, row.number(Measure::MinutesWanted))))
        .and(pick(&LIMIT_0, steps_between(row.number(Measure::Flow), pick(&LIMIT_0_STEPS, pick(&LIMIT_0_OF, row.device_place(4) * 5 + row.group_place(3)).into()))))
        .and(pick(&LIMIT_1, steps_between(row.number(Measure::Flow), pick(&LIMIT_1_STEPS, pick(&LIMIT_1_OF, row.device_place(4) * 5 + row.group_place(3)).into()))))
        .and(pick(&LIMIT_2, steps_between(row.number(Measure::Flow), pick(&LIMIT_2_STEPS, pick(&LIMIT_2_OF, row.device_place(4) * 5 + row.group_place(3)).into()))))
        .link(32, 0)
        .link(33, 3)
        .link(34, 6)
        .link(35, 37)
        .link(36, 37)
        .link(37, 7)
        .link(38, 8)
        .link(39, 8)
        .link(40, 9)
        .link(41, 11)
        .link(42, 43)
        .link(43, 13)
        .link(44, 45)
        .link(45, 14)
        .link(46, 16)
        .link(47, 49)
        .link(48, 50)
        .link(49, 17)
        .link(50, 17)
        .link(51, 52)
        .link(52, 18)
        .link(53, 54)
        .link(54, 20)
        .link(55, 24)
        .link(56, 24)
        .link(57, 25)
        .link(58, 26)
        .link(59, 60)
        .link(60, 27)
        .link(61, 28)
        .link(62, 63)
        .link(63, 30)
}

#[inline]
fn page_2(row: &Row) -> Doubt {
    // flow: not known, then from each of these numbers of L/min on.
    const FLOW_STEPS: [f64; 9] = [f64::MIN, 0.0, 0.4999999995, 1.000000001, 1.999999998, 3.999999996, 4.000000004, 14.999999985, 15.000000015000001];
    static FLOW: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x2470480160000400, 0x0),
        Doubt::new(0x470400060000000, 0x470400060000000),
        Doubt::new(0x70480060000000, 0x70480060000000),
        Doubt::new(0x10480060000000, 0x10480060000000),
        Doubt::new(0x30480060000400, 0x30480060000400),
        Doubt::new(0x30480040000400, 0x30480040000400),
        Doubt::new(0x20080000000400, 0x20080000000400),
        Doubt::new(0x470000100000400, 0x470000100000400),
        Doubt::new(0x2470000100000400, 0x2470000100000400),
        Doubt::new(0x2470000140000400, 0x2470000140000400),
    ]);
    // pressure: not known, then from each of these numbers of pascals on.
    const PRESSURE_STEPS: [f64; 11] = [f64::MIN, 0.0, 5e-324, 3447378.6431368017, 4999999.995, 5000000.005000001, 9999999.99, 10000000.010000002, 13699999.9863, 13700000.013700001, 13789514.572547207];
    static PRESSURE: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x102d210105800002, 0x0),
        Doubt::new(0x2c000001000002, 0x2c000001000002),
        Doubt::new(0x28000001000002, 0x28000001000002),
        Doubt::new(0x2c010001000002, 0x2c010001000002),
        Doubt::new(0x2c010001800002, 0x2c010001800002),
        Doubt::new(0x2c010005800002, 0x2c010005800002),
        Doubt::new(0x2c010004800000, 0x2c010004800000),
        Doubt::new(0x2d010004800000, 0x2d010004800000),
        Doubt::new(0x102c010000800000, 0x102c010000800000),
        Doubt::new(0x1024010000800000, 0x1024010000800000),
        Doubt::new(0x100c010100800000, 0x100c010100800000),
        Doubt::new(0x100c210100800000, 0x100c210100800000),
    ]);
    // temperature: not known, then from each of these numbers of °C on.
    const TEMPERATURE_STEPS: [f64; 11] = [f64::MIN, -20.000000019999998, -19.99999998, -9.99999999, 5e-324, 9.999999990000001, 19.999999980000002, 20.00000002, 40.00000004, 49.99999995, 50.000000050000004];
    static TEMPERATURE: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x214a004203108010, 0x0),
        Doubt::new(0x204a004001108000, 0x204a004001108000),
        Doubt::new(0x210a004001108000, 0x210a004001108000),
        Doubt::new(0x200a004001108000, 0x200a004001108000),
        Doubt::new(0x200a004003008010, 0x200a004003008010),
        Doubt::new(0x204a004003008010, 0x204a004003008010),
        Doubt::new(0x4a000003008010, 0x4a000003008010),
        Doubt::new(0x48000003008010, 0x48000003008010),
        Doubt::new(0x4a000003008010, 0x4a000003008010),
        Doubt::new(0x2042004003008010, 0x2042004003008010),
        Doubt::new(0x2042004002008010, 0x2042004002008010),
        Doubt::new(0x2042004202008010, 0x2042004202008010),
    ]);
    // spo2: not known, then from each of these numbers of percent on.
    const SPO2_STEPS: [f64; 4] = [f64::MIN, 84.999999915, 85.00000008500001, 100.00000010000001];
    static SPO2: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x80101800000000, 0x0),
        Doubt::new(0x100000000000, 0x100000000000),
        Doubt::new(0x80001800000000, 0x80001800000000),
        Doubt::new(0x80000000000000, 0x80000000000000),
        Doubt::new(0x0, 0x0),
    ]);
    // minutes left: not known, then from each of these numbers of minutes on.
    const MINUTES_LEFT_STEPS: [f64; 7] = [f64::MIN, 1.4999999985, 1.5000000015000001, 9.999999990000001, 89.99999991000001, 90.00000009, 120.00000012000001];
    static MINUTES_LEFT: [Doubt; 8] = [
        Doubt::new(0x800800084000, 0x0),
        Doubt::new(0x800084000, 0x800084000),
        Doubt::new(0x800004000, 0x800004000),
        Doubt::new(0x800084000, 0x800084000),
        Doubt::new(0x800080000, 0x800080000),
        Doubt::new(0x800800080000, 0x800800080000),
        Doubt::new(0x800000080000, 0x800000080000),
        Doubt::new(0x800000084000, 0x800000084000),
    ];
    // minutes wanted: not known, then from each of these numbers of minutes on.
    const MINUTES_WANTED_STEPS: [f64; 7] = [f64::MIN, 1.4999999985, 1.5000000015000001, 9.999999990000001, 10.00000001, 59.99999994, 60.000000060000005];
    static MINUTES_WANTED: [Doubt; 8] = [
        Doubt::new(0x498020e000000018, 0x0),
        Doubt::new(0x4880200000000010, 0x4880200000000010),
        Doubt::new(0x4080200000000010, 0x4080200000000010),
        Doubt::new(0x488020a000000000, 0x488020a000000000),
        Doubt::new(0x498020a000000008, 0x498020a000000008),
        Doubt::new(0x498020a000000000, 0x498020a000000000),
        Doubt::new(0x498000a000000000, 0x498000a000000000),
        Doubt::new(0x490000e000000000, 0x490000e000000000),
    ];
    static FACTS_3: ByThree = by_three([
        Sign::new(0x0, 0x0),
        Sign::new(0x2000000000000, 0x1000000000), // cylinder secured
        Sign::new(0x40000000000000, 0x0), // cylinder laid down
    ]);
    static FACTS_6: ByThree = by_three([
        Sign::new(0x0, 0x80000000000), // cylinder standing free
        Sign::new(0x0, 0x800), // outlet clear
        Sign::new(0x0, 0x40000000), // washer fitted
    ]);
    static FACTS_9: ByThree = by_three([
        Sign::new(0x0, 0x0),
        Sign::new(0x80000, 0x8), // regulator pressurised
        Sign::new(0x0, 0x0),
    ]);
    static FACTS_12: ByThree = by_three([
        Sign::new(0x80100000, 0x0), // grease near
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x0),
    ]);
    static CONDITIONS_0: ByThree = by_three([
        Sign::new(0x100000000, 0x8000000000000), // retains-gas
        Sign::new(0x10000102000, 0x800000), // wheezes
        Sign::new(0x0, 0x0),
    ]);
    // Not known, each of the book, and one of another book.
    static DEVICES: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x21082aa24a02440, 0x0),
        Doubt::new(0x1082aa20002400, 0x1082aa20002400),
        Doubt::new(0x10822a20800040, 0x10822a20800040),
        Doubt::new(0x210020204800000, 0x210020204800000),
        Doubt::new(0x822020a00000, 0x822020a00000),
        Doubt::new(0x10822224800000, 0x10822220800000),
    ]);
    // Not known, each of the book, and one of another book.
    static GROUPS: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0xc00400000000002, 0x0),
        Doubt::new(0xc00000000000002, 0xc00000000000002),
        Doubt::new(0xc00400000000000, 0xc00400000000000),
        Doubt::new(0x0, 0x0),
        Doubt::new(0xc00000000000000, 0xc00000000000000),
    ]);
    Doubt::new(0x0, 0x0)
        .and(pick(&FLOW, steps(row.number(Measure::Flow), &FLOW_STEPS)))
        .and(pick(&PRESSURE, steps(row.number(Measure::Pressure), &PRESSURE_STEPS)))
        .and(pick(&TEMPERATURE, steps(row.number(Measure::Temperature), &TEMPERATURE_STEPS)))
        .and(pick(&SPO2, steps(row.number(Measure::Spo2), &SPO2_STEPS)))
        .and(pick(&MINUTES_LEFT, steps(row.number(Measure::MinutesLeft), &MINUTES_LEFT_STEPS)))
        .and(pick(&MINUTES_WANTED, steps(row.number(Measure::MinutesWanted), &MINUTES_WANTED_STEPS)))
        .and(FACTS_3.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 3))
        .and(FACTS_6.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 6))
        .and(FACTS_9.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 9))
        .and(FACTS_12.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 12))
        .and(CONDITIONS_0.doubt(row.has(), row.has_not(), 0))
        .and(pick(&DEVICES, row.device_place(4)))
        .and(pick(&GROUPS, row.group_place(3)))
        .link(32, 34)
        .link(33, 34)
        .link(34, 0)
        .link(35, 2)
        .link(36, 3)
        .link(37, 5)
        .link(38, 6)
        .link(39, 7)
        .link(40, 42)
        .link(41, 42)
        .link(42, 8)
        .link(43, 44)
        .link(44, 9)
        .link(45, 12)
        .link(46, 13)
        .link(47, 48)
        .link(48, 14)
        .link(49, 50)
        .link(50, 15)
        .link(51, 16)
        .link(52, 17)
        .link(53, 18)
        .link(54, 22)
        .link(56, 57)
        .link(55, 24)
        .link(57, 24)
        .link(58, 60)
        .link(59, 27)
        .link(60, 27)
        .link(61, 28)
        .link(62, 31)
}

#[inline]
fn page_3(row: &Row) -> Doubt {
    // flow: not known, then from each of these numbers of L/min on.
    const FLOW_STEPS: [f64; 9] = [f64::MIN, 2.4999999975000002, 2.5000000025, 3.999999996, 4.000000004, 7.999999992, 8.000000008, 10.00000001, 15.000000015000001];
    static FLOW: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x4000112160, 0x0),
        Doubt::new(0x4000102040, 0x4000102040),
        Doubt::new(0x102040, 0x102040),
        Doubt::new(0x102140, 0x102140),
        Doubt::new(0x112140, 0x112140),
        Doubt::new(0x4000112140, 0x4000112140),
        Doubt::new(0x4000112160, 0x4000112160),
        Doubt::new(0x4000112100, 0x4000112100),
        Doubt::new(0x4000012100, 0x4000012100),
        Doubt::new(0x4000010100, 0x4000010100),
    ]);
    // pressure: not known, then from each of these numbers of pascals on.
    const PRESSURE_STEPS: [f64; 9] = [f64::MIN, 3447378.6431368017, 3447378.650031559, 4999999.995, 5000000.005000001, 9999999.99, 10000000.010000002, 13699999.9863, 13700000.013700001];
    static PRESSURE: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x1051c05020408940, 0x0),
        Doubt::new(0x1001004020000100, 0x1001004020000100),
        Doubt::new(0x1001005020000100, 0x1001005020000100),
        Doubt::new(0x1041005020000100, 0x1041005020000100),
        Doubt::new(0x1041801020008040, 0x1041801020008040),
        Doubt::new(0x1041001020000000, 0x1041001020000000),
        Doubt::new(0x1041001000000000, 0x1041001000000000),
        Doubt::new(0x41000020000800, 0x41000020000800),
        Doubt::new(0x41000020400800, 0x41000020400800),
        Doubt::new(0x51400020000800, 0x51400020000800),
    ]);
    // temperature: not known, then from each of these numbers of °C on.
    const TEMPERATURE_STEPS: [f64; 12] = [f64::MIN, -20.000000019999998, -19.99999998, -10.000000009999999, -9.99999999, 0.0, 5e-324, 9.999999990000001, 19.999999980000002, 20.00000002, 40.00000004, 49.99999995];
    static TEMPERATURE: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x140b28880002a0a2, 0x0),
        Doubt::new(0x408000000002082, 0x408000000002082),
        Doubt::new(0x408000000002002, 0x408000000002002),
        Doubt::new(0x408000000002082, 0x408000000002082),
        Doubt::new(0x400280800020082, 0x400280800020082),
        Doubt::new(0x408080800022082, 0x408080800022082),
        Doubt::new(0x40808080002a0a2, 0x40808080002a0a2),
        Doubt::new(0x4080808000220a2, 0x4080808000220a2),
        Doubt::new(0x4080888000220a2, 0x4080888000220a2),
        Doubt::new(0x4080888000220a0, 0x4080888000220a0),
        Doubt::new(0x1409088800022080, 0x1409088800022080),
        Doubt::new(0x1409080800022082, 0x1409080800022082),
        Doubt::new(0x140b080800022082, 0x140b080800022082),
    ]);
    // spo2: not known, then from each of these numbers of percent on.
    const SPO2_STEPS: [f64; 8] = [f64::MIN, 84.999999915, 87.999999912, 88.00000008800001, 91.999999908, 93.99999990600001, 94.000000094, 97.99999990200001];
    static SPO2: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x210008400824, 0x0),
        Doubt::new(0x200000400804, 0x200000400804),
        Doubt::new(0x200000400800, 0x200000400800),
        Doubt::new(0x200000400820, 0x200000400820),
        Doubt::new(0x200000400000, 0x200000400000),
        Doubt::new(0x210000400000, 0x210000400000),
        Doubt::new(0x10008400000, 0x10008400000),
        Doubt::new(0x210008400000, 0x210008400000),
        Doubt::new(0x210008000000, 0x210008000000),
    ]);
    // minutes left: not known, then from each of these numbers of minutes on.
    const MINUTES_LEFT_STEPS: [f64; 7] = [f64::MIN, 0.0, 5e-324, 1.4999999985, 9.999999990000001, 14.999999985, 120.00000012000001];
    static MINUTES_LEFT: [Doubt; 8] = [
        Doubt::new(0x204080040080190, 0x0),
        Doubt::new(0x80040000000, 0x80040000000),
        Doubt::new(0x4080000000080, 0x4080000000080),
        Doubt::new(0x4080040000000, 0x4080040000000),
        Doubt::new(0x204080040080000, 0x204080040080000),
        Doubt::new(0x204000040080000, 0x204000040080000),
        Doubt::new(0x204000040080100, 0x204000040080100),
        Doubt::new(0x200000040080010, 0x200000040080010),
    ];
    // minutes wanted: not known, then from each of these numbers of minutes on.
    const MINUTES_WANTED_STEPS: [f64; 7] = [f64::MIN, 0.0, 5e-324, 1.5000000015000001, 14.999999985, 59.99999994, 90.00000009];
    static MINUTES_WANTED: [Doubt; 8] = [
        Doubt::new(0x2100000000000104, 0x0),
        Doubt::new(0x100000000000000, 0x100000000000000),
        Doubt::new(0x100000000000004, 0x100000000000004),
        Doubt::new(0x100000000000000, 0x100000000000000),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x100, 0x100),
        Doubt::new(0x2000000000000100, 0x2000000000000100),
        Doubt::new(0x2000000000000000, 0x2000000000000000),
    ];
    static FACTS_0: ByThree = by_three([
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x0),
        Sign::new(0x4400000000000, 0x1000000001000), // reservoir filled
    ]);
    static FACTS_3: ByThree = by_three([
        Sign::new(0x0, 0x800000000000), // cylinder open
        Sign::new(0x40100000000, 0x40000004), // cylinder secured
        Sign::new(0x0, 0x4000000000000), // cylinder laid down
    ]);
    static FACTS_6: ByThree = by_three([
        Sign::new(0x0, 0x108000000000000), // cylinder standing free
        Sign::new(0x10000000000000, 0x840000000000000), // outlet clear
        Sign::new(0x40000000, 0x0), // washer fitted
    ]);
    static FACTS_9: ByThree = by_three([
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x1000000000), // regulator pressurised
        Sign::new(0x0, 0x20000000008), // flame near
    ]);
    static CONDITIONS_0: ByThree = by_three([
        Sign::new(0x2000000000008000, 0x2000000000), // retains-gas
        Sign::new(0x100008000, 0x800000000000000), // wheezes
        Sign::new(0x0, 0x0),
    ]);
    // Not known, each of the book, and one of another book.
    static DEVICES: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x2600031022081000, 0x0),
        Doubt::new(0x2600010002081000, 0x2600010002081000),
        Doubt::new(0x2600000002000000, 0x2600000002000000),
        Doubt::new(0x2400000000001000, 0x2400000000001000),
        Doubt::new(0x200021022001000, 0x200021022001000),
        Doubt::new(0x2600000002001000, 0x2600000002001000),
    ]);
    // Not known, each of the book, and one of another book.
    static GROUPS: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x222022010000, 0x0),
        Doubt::new(0x2000000, 0x2000000),
        Doubt::new(0x202022000000, 0x202022000000),
        Doubt::new(0x20000010000, 0x20000010000),
        Doubt::new(0x2000000, 0x2000000),
    ]);
    // Not known, yes, no.
    static PAIR_0: [Doubt; 4] = [
        Doubt::new(0x10, 0x0),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x10, 0x10),
        Doubt::new(0x0, 0x0),
    ];
    // Not known, yes, no.
    static PAIR_1: [Doubt; 4] = [
        Doubt::new(0x80, 0x0),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x80, 0x80),
        Doubt::new(0x0, 0x0),
    ];
    // Not known, yes, no.
    static PAIR_2: [Doubt; 4] = [
        Doubt::new(0x20000000000, 0x0),
        Doubt::new(0x20000000000, 0x20000000000),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    // Not known, yes, no.
    static PAIR_3: [Doubt; 4] = [
        Doubt::new(0x82000000000000, 0x0),
        Doubt::new(0x82000000000000, 0x82000000000000),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    // Not known, yes, no.
    static PAIR_4: [Doubt; 4] = [
        Doubt::new(0x20000000000000, 0x0),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x20000000000000, 0x20000000000000),
        Doubt::new(0x0, 0x0),
    ];
    // flow less than the device's least flow: where the answer becomes unknown, and where it is known again.
    static LIMIT_0_STEPS: [[f64; 2]; 16] = padded([0.0; 2], &[
        [-f64::INFINITY, f64::INFINITY],
        [0.4999999995, 0.999999999],
        [0.4999999995, 0.4999999995],
        [0.999999999, 0.999999999],
        [5.999999994, 5.999999994],
        [3.999999996, 9.999999990000001],
        [3.999999996, 3.999999996],
        [9.999999990000001, 9.999999990000001],
        [1.999999998, 1.999999998],
    ]);
    // Which of them: a row for each device; in it the group not known, each group, and one of another book.
    static LIMIT_0_OF: [u16; 32] = padded(0, &[
        0, 0, 0, 0, 0, // no device of the book
        1, 2, 3, 3, 3, // cannula
        4, 4, 4, 4, 4, // mask
        5, 6, 7, 7, 7, // bag
        8, 8, 8, 8, 8, // blow-by
        0, 0, 0, 0, 0, // no device of the book
    ]);
    static LIMIT_0: [Doubt; 4] = [
        Doubt::new(0x40000000000, 0x0),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x40000000000, 0x0),
        Doubt::new(0x40000000000, 0x40000000000),
    ];
    // flow greater than the device's least flow: where the answer becomes unknown, and where it is known again.
    static LIMIT_1_STEPS: [[f64; 2]; 16] = padded([0.0; 2], &[
        [-f64::INFINITY, f64::INFINITY],
        [0.5000000005, 1.000000001],
        [0.5000000005, 0.5000000005],
        [1.000000001, 1.000000001],
        [6.0000000060000005, 6.0000000060000005],
        [4.000000004, 10.00000001],
        [4.000000004, 4.000000004],
        [10.00000001, 10.00000001],
        [2.000000002, 2.000000002],
    ]);
    // Which of them: a row for each device; in it the group not known, each group, and one of another book.
    static LIMIT_1_OF: [u16; 32] = padded(0, &[
        0, 0, 0, 0, 0, // no device of the book
        1, 2, 3, 3, 3, // cannula
        4, 4, 4, 4, 4, // mask
        5, 6, 7, 7, 7, // bag
        8, 8, 8, 8, 8, // blow-by
        0, 0, 0, 0, 0, // no device of the book
    ]);
    static LIMIT_1: [Doubt; 4] = [
        Doubt::new(0x20000, 0x0),
        Doubt::new(0x20000, 0x20000),
        Doubt::new(0x20000, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    Doubt::new(0x0, 0x0)
        .and(pick(&FLOW, steps(row.number(Measure::Flow), &FLOW_STEPS)))
        .and(pick(&PRESSURE, steps(row.number(Measure::Pressure), &PRESSURE_STEPS)))
        .and(pick(&TEMPERATURE, steps(row.number(Measure::Temperature), &TEMPERATURE_STEPS)))
        .and(pick(&SPO2, steps(row.number(Measure::Spo2), &SPO2_STEPS)))
        .and(pick(&MINUTES_LEFT, steps(row.number(Measure::MinutesLeft), &MINUTES_LEFT_STEPS)))
        .and(pick(&MINUTES_WANTED, steps(row.number(Measure::MinutesWanted), &MINUTES_WANTED_STEPS)))
        .and(FACTS_0.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 0))
        .and(FACTS_3.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 3))
        .and(FACTS_6.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 6))
        .and(FACTS_9.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 9))
        .and(CONDITIONS_0.doubt(row.has(), row.has_not(), 0))
        .and(pick(&DEVICES, row.device_place(4)))
        .and(pick(&GROUPS, row.group_place(3)))
        .and(pick(&PAIR_0, answer(row.number(Measure::Spo2), Comparison::Less, row.target_low())))
        .and(pick(&PAIR_1, answer(row.number(Measure::MinutesWanted), Comparison::Greater, row.number(Measure::MinutesLeft))))
        .and(pick(&PAIR_2, answer(row.number(Measure::Spo2), Comparison::Greater, row.target_high())))
        .and(pick(&PAIR_3, answer(row.number(Measure::MinutesLeft), Comparison::Equal, row.number(Measure::MinutesWanted))))
        .and(pick(&PAIR_4, answer(row.number(Measure::Spo2), Comparison::Greater, row.target_low())))
        .and(pick(&LIMIT_0, steps_between(row.number(Measure::Flow), pick(&LIMIT_0_STEPS, pick(&LIMIT_0_OF, row.device_place(4) * 5 + row.group_place(3)).into()))))
        .and(pick(&LIMIT_1, steps_between(row.number(Measure::Flow), pick(&LIMIT_1_STEPS, pick(&LIMIT_1_OF, row.device_place(4) * 5 + row.group_place(3)).into()))))
        .link(36, 0)
        .link(37, 1)
        .link(38, 39)
        .link(39, 4)
        .link(40, 6)
        .link(41, 9)
        .link(42, 44)
        .link(43, 44)
        .link(44, 10)
        .link(45, 11)
        .link(46, 14)
        .link(47, 17)
        .link(48, 18)
        .link(49, 21)
        .link(50, 23)
        .link(51, 24)
        .link(52, 53)
        .link(53, 25)
        .link(54, 55)
        .link(55, 56)
        .link(56, 26)
        .link(57, 28)
        .link(58, 59)
        .link(59, 31)
        .link(60, 33)
        .link(61, 34)
}

#[inline]
fn page_4(row: &Row) -> Doubt {
    // flow: not known, then from each of these numbers of L/min on.
    const FLOW_STEPS: [f64; 8] = [f64::MIN, 0.5000000005, 2.4999999975000002, 4.000000004, 10.00000001, 11.999999988, 12.000000012000001, 15.000000015000001];
    static FLOW: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x11010000040000c, 0x0),
        Doubt::new(0x10100000400008, 0x10100000400008),
        Doubt::new(0x100000400008, 0x100000400008),
        Doubt::new(0x100000400000, 0x100000400000),
        Doubt::new(0x400000, 0x400000),
        Doubt::new(0x8, 0x8),
        Doubt::new(0xc, 0xc),
        Doubt::new(0x8, 0x8),
        Doubt::new(0x100000000000008, 0x100000000000008),
    ]);
    // pressure: not known, then from each of these numbers of pascals on.
    const PRESSURE_STEPS: [f64; 5] = [f64::MIN, 3447378.6431368017, 3447378.650031559, 13699999.9863, 13700000.013700001];
    static PRESSURE: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x1200400200101400, 0x0),
        Doubt::new(0x1000400200000400, 0x1000400200000400),
        Doubt::new(0x1000000200101000, 0x1000000200101000),
        Doubt::new(0x1000400200100000, 0x1000400200100000),
        Doubt::new(0x1000400000100000, 0x1000400000100000),
        Doubt::new(0x1200400000000000, 0x1200400000000000),
    ]);
    // temperature: not known, then from each of these numbers of °C on.
    const TEMPERATURE_STEPS: [f64; 11] = [f64::MIN, -20.000000019999998, -10.000000009999999, -9.99999999, 9.999999990000001, 10.00000001, 19.999999980000002, 20.00000002, 39.999999960000004, 40.00000004, 50.000000050000004];
    static TEMPERATURE: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x2000a1a001000280, 0x0),
        Doubt::new(0x200001a001000080, 0x200001a001000080),
        Doubt::new(0x200001a001000000, 0x200001a001000000),
        Doubt::new(0x2000812001000000, 0x2000812001000000),
        Doubt::new(0x2000012001000080, 0x2000012001000080),
        Doubt::new(0x12001000080, 0x12001000080),
        Doubt::new(0x12001000280, 0x12001000280),
        Doubt::new(0x202001000280, 0x202001000280),
        Doubt::new(0x212001000280, 0x212001000280),
        Doubt::new(0x210001000280, 0x210001000280),
        Doubt::new(0x2000010001000280, 0x2000010001000280),
        Doubt::new(0x2000012001000280, 0x2000012001000280),
    ]);
    // spo2: not known, then from each of these numbers of percent on.
    const SPO2_STEPS: [f64; 9] = [f64::MIN, 87.999999912, 88.00000008800001, 88.0999999119, 91.999999908, 92.00000009200001, 93.99999990600001, 94.000000094, 100.00000010000001];
    static SPO2: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0xd00c000000, 0x0),
        Doubt::new(0x500c000000, 0x500c000000),
        Doubt::new(0xd00c000000, 0xd00c000000),
        Doubt::new(0xc00c000000, 0xc00c000000),
        Doubt::new(0x800c000000, 0x800c000000),
        Doubt::new(0x8004000000, 0x8004000000),
        Doubt::new(0x800c000000, 0x800c000000),
        Doubt::new(0x8008000000, 0x8008000000),
        Doubt::new(0x8000000, 0x8000000),
        Doubt::new(0xc000000, 0xc000000),
    ]);
    // minutes left: not known, then from each of these numbers of minutes on.
    const MINUTES_LEFT_STEPS: [f64; 7] = [f64::MIN, 1.5000000015000001, 9.999999990000001, 10.00000001, 60.000000060000005, 119.99999988, 120.00000012000001];
    static MINUTES_LEFT: [Doubt; 8] = [
        Doubt::new(0xa02480848001002, 0x0),
        Doubt::new(0x80040000002, 0x80040000002),
        Doubt::new(0x200080040000002, 0x200080040000002),
        Doubt::new(0xa02480840000002, 0xa02480840000002),
        Doubt::new(0xa00480848000002, 0xa00480848000002),
        Doubt::new(0xa00400848000000, 0xa00400848000000),
        Doubt::new(0xa02400808001000, 0xa02400808001000),
        Doubt::new(0xa00000048001000, 0xa00000048001000),
    ];
    // minutes wanted: not known, then from each of these numbers of minutes on.
    const MINUTES_WANTED_STEPS: [f64; 6] = [f64::MIN, 1.4999999985, 89.99999991000001, 90.00000009, 119.99999988, 120.00000012000001];
    static MINUTES_WANTED: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x4021000080000, 0x0),
        Doubt::new(0x4020000080000, 0x4020000080000),
        Doubt::new(0x4021000080000, 0x4021000080000),
        Doubt::new(0x4021000000000, 0x4021000000000),
        Doubt::new(0x4001000000000, 0x4001000000000),
        Doubt::new(0x1000000000, 0x1000000000),
        Doubt::new(0x4001000080000, 0x4001000080000),
    ]);
    static FACTS_0: ByThree = by_three([
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x8000000008000), // reservoir filled
    ]);
    static FACTS_3: ByThree = by_three([
        Sign::new(0x800000000000, 0x40000000000000), // cylinder open
        Sign::new(0x0, 0x0),
        Sign::new(0x8000000000000, 0x8000), // cylinder laid down
    ]);
    static FACTS_6: ByThree = by_three([
        Sign::new(0x0, 0x0),
        Sign::new(0x880000000000000, 0x100000000000000), // outlet clear
        Sign::new(0x140000000000, 0x200), // washer fitted
    ]);
    static FACTS_9: ByThree = by_three([
        Sign::new(0x0, 0x400010000000000), // regulator seated
        Sign::new(0x0, 0x4000000000), // regulator pressurised
        Sign::new(0x2000000000080000, 0x0), // flame near
    ]);
    static FACTS_12: ByThree = by_three([
        Sign::new(0x40000000, 0x0), // grease near
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x0),
    ]);
    static CONDITIONS_0: ByThree = by_three([
        Sign::new(0x10000040000000, 0x0), // retains-gas
        Sign::new(0x8000, 0x800000040), // wheezes
        Sign::new(0x0, 0x0),
    ]);
    // Not known, each of the book, and one of another book.
    static DEVICES: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x44e08204001a100c, 0x0),
        Doubt::new(0x408004001a1004, 0x408004001a1004),
        Doubt::new(0x4c00000000a1000, 0x4c00000000a1000),
        Doubt::new(0x4080820400180004, 0x4080820400180004),
        Doubt::new(0xe080000012100c, 0xe080000012100c),
        Doubt::new(0xc08000001a1004, 0x80800000181004),
    ]);
    // Not known, each of the book, and one of another book.
    static GROUPS: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x51080000020000, 0x0),
        Doubt::new(0x40080000000000, 0x40080000000000),
        Doubt::new(0x51080000020000, 0x51080000020000),
        Doubt::new(0x11000000000000, 0x11000000000000),
        Doubt::new(0x51080000000000, 0x51080000000000),
    ]);
    // Not known, yes, no.
    static PAIR_0: [Doubt; 4] = [
        Doubt::new(0x200000000, 0x0),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x200000000, 0x200000000),
        Doubt::new(0x0, 0x0),
    ];
    // Not known, yes, no.
    static PAIR_1: [Doubt; 4] = [
        Doubt::new(0x4, 0x0),
        Doubt::new(0x4, 0x4),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    // Not known, yes, no.
    static PAIR_2: [Doubt; 4] = [
        Doubt::new(0x10, 0x0),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x10, 0x10),
        Doubt::new(0x0, 0x0),
    ];
    // Not known, yes, no.
    static PAIR_3: [Doubt; 4] = [
        Doubt::new(0x4000000000000, 0x0),
        Doubt::new(0x4000000000000, 0x4000000000000),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    // Not known, yes, no.
    static PAIR_4: [Doubt; 4] = [
        Doubt::new(0x20000000000000, 0x0),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x20000000000000, 0x20000000000000),
        Doubt::new(0x0, 0x0),
    ];
    Doubt::new(0x0, 0x0)
        .and(pick(&FLOW, steps(row.number(Measure::Flow), &FLOW_STEPS)))
        .and(pick(&PRESSURE, steps(row.number(Measure::Pressure), &PRESSURE_STEPS)))
        .and(pick(&TEMPERATURE, steps(row.number(Measure::Temperature), &TEMPERATURE_STEPS)))
        .and(pick(&SPO2, steps(row.number(Measure::Spo2), &SPO2_STEPS)))
        .and(pick(&MINUTES_LEFT, steps(row.number(Measure::MinutesLeft), &MINUTES_LEFT_STEPS)))
        .and(pick(&MINUTES_WANTED, steps(row.number(Measure::MinutesWanted), &MINUTES_WANTED_STEPS)))
        .and(FACTS_0.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 0))
        .and(FACTS_3.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 3))
        .and(FACTS_6.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 6))
        .and(FACTS_9.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 9))
        .and(FACTS_12.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 12))
        .and(CONDITIONS_0.doubt(row.has(), row.has_not(), 0))
        .and(pick(&DEVICES, row.device_place(4)))
        .and(pick(&GROUPS, row.group_place(3)))
        .and(pick(&PAIR_0, answer(row.number(Measure::MinutesLeft), Comparison::Equal, row.number(Measure::MinutesWanted))))
        .and(pick(&PAIR_1, answer(row.number(Measure::MinutesLeft), Comparison::Greater, row.number(Measure::MinutesWanted))))
        .and(pick(&PAIR_2, answer(row.number(Measure::Spo2), Comparison::Less, row.target_low())))
        .and(pick(&PAIR_3, answer(row.number(Measure::MinutesWanted), Comparison::Equal, row.number(Measure::MinutesLeft))))
        .and(pick(&PAIR_4, answer(row.number(Measure::Spo2), Comparison::Equal, row.target_high())))
        .link(33, 34)
        .link(34, 0)
        .link(35, 1)
        .link(36, 37)
        .link(37, 5)
        .link(38, 6)
        .link(39, 6)
        .link(40, 7)
        .link(41, 42)
        .link(42, 8)
        .link(43, 10)
        .link(44, 45)
        .link(45, 11)
        .link(46, 13)
        .link(47, 48)
        .link(48, 14)
        .link(49, 16)
        .link(50, 18)
        .link(51, 21)
        .link(52, 23)
        .link(53, 24)
        .link(54, 25)
        .link(55, 28)
        .link(56, 29)
        .link(57, 29)
        .link(58, 30)
        .link(59, 60)
        .link(60, 31)
        .link(61, 62)
        .link(62, 32)
}

#[inline]
fn page_5(row: &Row) -> Doubt {
    // flow: not known, then from each of these numbers of L/min on.
    const FLOW_STEPS: [f64; 7] = [f64::MIN, 0.999999999, 1.000000001, 3.999999996, 4.000000004, 6.0000000060000005, 9.999999990000001];
    static FLOW: [Doubt; 8] = [
        Doubt::new(0x300a24000020000, 0x0),
        Doubt::new(0x200000000000000, 0x200000000000000),
        Doubt::new(0x200800000020000, 0x200800000020000),
        Doubt::new(0x200200000020000, 0x200200000020000),
        Doubt::new(0x300224000020000, 0x300224000020000),
        Doubt::new(0x200224000020000, 0x200224000020000),
        Doubt::new(0x200224000000000, 0x200224000000000),
        Doubt::new(0x224000000000, 0x224000000000),
    ];
    // pressure: not known, then from each of these numbers of pascals on.
    const PRESSURE_STEPS: [f64; 7] = [f64::MIN, 3447378.6431368017, 3447378.650031559, 4999999.995, 6894757.286273603, 13699999.9863, 13700000.013700001];
    static PRESSURE: [Doubt; 8] = [
        Doubt::new(0x67310081010000, 0x0),
        Doubt::new(0x25110000000000, 0x25110000000000),
        Doubt::new(0x25110001000000, 0x25110001000000),
        Doubt::new(0x25310001000000, 0x25310001000000),
        Doubt::new(0x21310001010000, 0x21310001010000),
        Doubt::new(0x21300001010000, 0x21300001010000),
        Doubt::new(0x62200081010000, 0x62200081010000),
        Doubt::new(0x47300001010000, 0x47300001010000),
    ];
    // temperature: not known, then from each of these numbers of °C on.
    const TEMPERATURE_STEPS: [f64; 9] = [f64::MIN, -20.000000019999998, -19.99999998, -10.000000009999999, -9.99999999, 5e-324, 9.999999990000001, 39.999999960000004, 50.000000050000004];
    static TEMPERATURE: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x1030406000100000, 0x0),
        Doubt::new(0x1030002000000000, 0x1030002000000000),
        Doubt::new(0x1020002000000000, 0x1020002000000000),
        Doubt::new(0x1030002000000000, 0x1030002000000000),
        Doubt::new(0x30002000000000, 0x30002000000000),
        Doubt::new(0x30002000100000, 0x30002000100000),
        Doubt::new(0x1030002000100000, 0x1030002000100000),
        Doubt::new(0x1030006000100000, 0x1030006000100000),
        Doubt::new(0x1030406000100000, 0x1030406000100000),
        Doubt::new(0x1030404000100000, 0x1030404000100000),
    ]);
    // spo2: not known, then from each of these numbers of percent on.
    const SPO2_STEPS: [f64; 5] = [f64::MIN, 84.999999915, 85.00000008500001, 88.00000008800001, 98.000000098];
    static SPO2: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x49000004000, 0x0),
        Doubt::new(0x48000004000, 0x48000004000),
        Doubt::new(0x49000004000, 0x49000004000),
        Doubt::new(0x48000004000, 0x48000004000),
        Doubt::new(0x48000000000, 0x48000000000),
        Doubt::new(0x0, 0x0),
    ]);
    // minutes left: not known, then from each of these numbers of minutes on.
    const MINUTES_LEFT_STEPS: [f64; 9] = [f64::MIN, 0.0, 5e-324, 1.4999999985, 9.999999990000001, 59.99999994, 60.000000060000005, 89.99999991000001, 120.00000012000001];
    static MINUTES_LEFT: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x4811020401120000, 0x0),
        Doubt::new(0x4001000001000000, 0x4001000001000000),
        Doubt::new(0x4011020401020000, 0x4011020401020000),
        Doubt::new(0x4011020401000000, 0x4011020401000000),
        Doubt::new(0x4011020401100000, 0x4011020401100000),
        Doubt::new(0x11020401100000, 0x11020401100000),
        Doubt::new(0x10020401100000, 0x10020401100000),
        Doubt::new(0x20401100000, 0x20401100000),
        Doubt::new(0x800020401100000, 0x800020401100000),
        Doubt::new(0x800020400100000, 0x800020400100000),
    ]);
    // minutes wanted: not known, then from each of these numbers of minutes on.
    const MINUTES_WANTED_STEPS: [f64; 5] = [f64::MIN, 9.999999990000001, 89.99999991000001, 90.00000009, 119.99999988];
    static MINUTES_WANTED: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x480000000000040, 0x0),
        Doubt::new(0x40, 0x40),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x400000000000000, 0x400000000000000),
        Doubt::new(0x40, 0x40),
        Doubt::new(0x80000000000040, 0x80000000000040),
    ]);
    static FACTS_0: ByThree = by_three([
        Sign::new(0x8, 0x0), // device on patient
        Sign::new(0x0, 0x0),
        Sign::new(0x40000000000000, 0x0), // reservoir filled
    ]);
    static FACTS_3: ByThree = by_three([
        Sign::new(0x2000000000, 0x0), // cylinder open
        Sign::new(0x100000, 0x0), // cylinder secured
        Sign::new(0x1000000, 0x100000000000010), // cylinder laid down
    ]);
    static FACTS_6: ByThree = by_three([
        Sign::new(0x0, 0x20000000), // cylinder standing free
        Sign::new(0x0, 0x10040000000), // outlet clear
        Sign::new(0x40000000000, 0x1000), // washer fitted
    ]);
    static FACTS_9: ByThree = by_three([
        Sign::new(0x0, 0x8000000000000000), // regulator seated
        Sign::new(0x0, 0x1000), // regulator pressurised
        Sign::new(0x0, 0x80000000), // flame near
    ]);
    static FACTS_12: ByThree = by_three([
        Sign::new(0x0, 0x800000000000), // grease near
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x0),
    ]);
    static CONDITIONS_0: ByThree = by_three([
        Sign::new(0x0, 0x800000400a), // retains-gas
        Sign::new(0x0, 0x200000000), // wheezes
        Sign::new(0x0, 0x0),
    ]);
    // Not known, each of the book, and one of another book.
    static DEVICES: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x5800010a2900c050, 0x0),
        Doubt::new(0x4800010009004040, 0x4800010009004040),
        Doubt::new(0x5000010221000040, 0x5000010221000040),
        Doubt::new(0x1800000a01000000, 0x1800000a01000000),
        Doubt::new(0x5800010200008050, 0x5800010200008050),
        Doubt::new(0x5800010a01000040, 0x5800000201000040),
    ]);
    // Not known, each of the book, and one of another book.
    static GROUPS: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x400001000020000, 0x0),
        Doubt::new(0x1000020000, 0x1000020000),
        Doubt::new(0x400001000000000, 0x400001000000000),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x1000000000, 0x1000000000),
    ]);
    // Not known, yes, no.
    static PAIR_0: [Doubt; 4] = [
        Doubt::new(0x400000000, 0x0),
        Doubt::new(0x400000000, 0x400000000),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    // Not known, yes, no.
    static PAIR_1: [Doubt; 4] = [
        Doubt::new(0x804000000, 0x0),
        Doubt::new(0x804000000, 0x804000000),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    // Not known, yes, no.
    static PAIR_2: [Doubt; 4] = [
        Doubt::new(0x80000000000000, 0x0),
        Doubt::new(0x80000000000000, 0x80000000000000),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    Doubt::new(0x0, 0x0)
        .and(pick(&FLOW, steps(row.number(Measure::Flow), &FLOW_STEPS)))
        .and(pick(&PRESSURE, steps(row.number(Measure::Pressure), &PRESSURE_STEPS)))
        .and(pick(&TEMPERATURE, steps(row.number(Measure::Temperature), &TEMPERATURE_STEPS)))
        .and(pick(&SPO2, steps(row.number(Measure::Spo2), &SPO2_STEPS)))
        .and(pick(&MINUTES_LEFT, steps(row.number(Measure::MinutesLeft), &MINUTES_LEFT_STEPS)))
        .and(pick(&MINUTES_WANTED, steps(row.number(Measure::MinutesWanted), &MINUTES_WANTED_STEPS)))
        .and(FACTS_0.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 0))
        .and(FACTS_3.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 3))
        .and(FACTS_6.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 6))
        .and(FACTS_9.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 9))
        .and(FACTS_12.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 12))
        .and(CONDITIONS_0.doubt(row.has(), row.has_not(), 0))
        .and(pick(&DEVICES, row.device_place(4)))
        .and(pick(&GROUPS, row.group_place(3)))
        .and(pick(&PAIR_0, answer(row.number(Measure::Spo2), Comparison::Greater, row.target_low())))
        .and(pick(&PAIR_1, answer(row.number(Measure::Spo2), Comparison::Less, row.target_high())))
        .and(pick(&PAIR_2, answer(row.number(Measure::Spo2), Comparison::Equal, row.target_high())))
        .link(33, 0)
        .link(34, 2)
        .link(35, 3)
        .link(36, 5)
        .link(37, 7)
        .link(38, 8)
        .link(39, 9)
        .link(40, 10)
        .link(41, 43)
        .link(42, 43)
        .link(43, 11)
        .link(44, 13)
        .link(45, 46)
        .link(46, 18)
        .link(47, 49)
        .link(48, 50)
        .link(49, 51)
        .link(50, 51)
        .link(51, 19)
        .link(52, 20)
        .link(53, 21)
        .link(54, 22)
        .link(55, 23)
        .link(56, 57)
        .link(57, 25)
        .link(58, 26)
        .link(59, 61)
        .link(60, 61)
        .link(61, 28)
        .link(62, 63)
        .link(63, 32)
}

#[inline]
fn page_6(row: &Row) -> Doubt {
    // flow: not known, then from each of these numbers of L/min on.
    const FLOW_STEPS: [f64; 10] = [f64::MIN, 0.0, 2.4999999975000002, 2.5000000025, 3.999999996, 4.000000004, 7.999999992, 11.999999988, 12.000000012000001, 14.999999985];
    static FLOW: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x14200001080110, 0x0),
        Doubt::new(0x10000000080000, 0x10000000080000),
        Doubt::new(0x14000000080000, 0x14000000080000),
        Doubt::new(0x14000000080010, 0x14000000080010),
        Doubt::new(0x14000001080010, 0x14000001080010),
        Doubt::new(0x14200001080110, 0x14200001080110),
        Doubt::new(0x14000001080010, 0x14000001080010),
        Doubt::new(0x14200001080010, 0x14200001080010),
        Doubt::new(0x14200001000010, 0x14200001000010),
        Doubt::new(0x14000001080010, 0x14000001080010),
        Doubt::new(0x4000001080010, 0x4000001080010),
    ]);
    // pressure: not known, then from each of these numbers of pascals on.
    const PRESSURE_STEPS: [f64; 7] = [f64::MIN, 4999999.995, 5000000.005000001, 6894757.286273603, 10000000.010000002, 13699999.9863, 13700000.013700001];
    static PRESSURE: [Doubt; 8] = [
        Doubt::new(0x103400600000202, 0x0),
        Doubt::new(0x3000600000200, 0x3000600000200),
        Doubt::new(0x3000400000202, 0x3000400000202),
        Doubt::new(0x101000200000200, 0x101000200000200),
        Doubt::new(0x101400200000200, 0x101400200000200),
        Doubt::new(0x101000200000200, 0x101000200000200),
        Doubt::new(0x101000200000000, 0x101000200000000),
        Doubt::new(0x100000200000200, 0x100000200000200),
    ];
    // temperature: not known, then from each of these numbers of °C on.
    const TEMPERATURE_STEPS: [f64; 9] = [f64::MIN, -20.000000019999998, -19.99999998, -10.000000009999999, -9.99999999, 9.999999990000001, 10.00000001, 20.00000002, 40.00000004];
    static TEMPERATURE: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x4108c00100008010, 0x0),
        Doubt::new(0x4008000000008000, 0x4008000000008000),
        Doubt::new(0x4008800000008000, 0x4008800000008000),
        Doubt::new(0x4008000000008000, 0x4008000000008000),
        Doubt::new(0x4108000000008000, 0x4108000000008000),
        Doubt::new(0x4008000000008000, 0x4008000000008000),
        Doubt::new(0x100000010, 0x100000010),
        Doubt::new(0x100008000, 0x100008000),
        Doubt::new(0x400100008000, 0x400100008000),
        Doubt::new(0x4008400100008000, 0x4008400100008000),
    ]);
    // spo2: not known, then from each of these numbers of percent on.
    const SPO2_STEPS: [f64; 7] = [f64::MIN, 84.999999915, 85.00000008500001, 88.0999999119, 88.1000000881, 91.999999908, 92.00000009200001];
    static SPO2: [Doubt; 8] = [
        Doubt::new(0x214000c000010400, 0x0),
        Doubt::new(0x40008000000000, 0x40008000000000),
        Doubt::new(0xc000000400, 0xc000000400),
        Doubt::new(0x200000c000000000, 0x200000c000000000),
        Doubt::new(0x200000c000010000, 0x200000c000010000),
        Doubt::new(0x2000004000010000, 0x2000004000010000),
        Doubt::new(0x2100004000010000, 0x2100004000010000),
        Doubt::new(0x2000004000010000, 0x2000004000010000),
    ];
    // minutes left: not known, then from each of these numbers of minutes on.
    const MINUTES_LEFT_STEPS: [f64; 10] = [f64::MIN, 0.0, 5e-324, 1.4999999985, 1.5000000015000001, 9.999999990000001, 10.00000001, 15.000000015000001, 119.99999988, 120.00000012000001];
    static MINUTES_LEFT: [Doubt; 16] = padded(Doubt::NONE, &[
        Doubt::new(0x8b0c0000000100, 0x0),
        Doubt::new(0x8a080000000000, 0x8a080000000000),
        Doubt::new(0x3040000000000, 0x3040000000000),
        Doubt::new(0x8b040000000000, 0x8b040000000000),
        Doubt::new(0x8b0c0000000000, 0x8b0c0000000000),
        Doubt::new(0x8b040000000000, 0x8b040000000000),
        Doubt::new(0x89040000000000, 0x89040000000000),
        Doubt::new(0x8b040000000000, 0x8b040000000000),
        Doubt::new(0x8a040000000000, 0x8a040000000000),
        Doubt::new(0x8a040000000100, 0x8a040000000100),
        Doubt::new(0x8a000000000100, 0x8a000000000100),
    ]);
    // minutes wanted: not known, then from each of these numbers of minutes on.
    const MINUTES_WANTED_STEPS: [f64; 6] = [f64::MIN, 9.999999990000001, 59.99999994, 60.000000060000005, 119.99999988, 120.00000012000001];
    static MINUTES_WANTED: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x4220001000000000, 0x0),
        Doubt::new(0x220001000000000, 0x220001000000000),
        Doubt::new(0x20001000000000, 0x20001000000000),
        Doubt::new(0x1000000000, 0x1000000000),
        Doubt::new(0x4020001000000000, 0x4020001000000000),
        Doubt::new(0x4020000000000000, 0x4020000000000000),
        Doubt::new(0x4220000000000000, 0x4220000000000000),
    ]);
    static FACTS_0: ByThree = by_three([
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x0),
        Sign::new(0x10, 0x0), // reservoir filled
    ]);
    static FACTS_3: ByThree = by_three([
        Sign::new(0x200, 0x0), // cylinder open
        Sign::new(0x0, 0x220000000000000), // cylinder secured
        Sign::new(0x0, 0x1000000), // cylinder laid down
    ]);
    static FACTS_6: ByThree = by_three([
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x0),
        Sign::new(0x1000000000000000, 0x0), // washer fitted
    ]);
    static FACTS_9: ByThree = by_three([
        Sign::new(0x100000000000, 0x0), // regulator seated
        Sign::new(0x0, 0x2020000000), // regulator pressurised
        Sign::new(0x20000000000, 0x200000000), // flame near
    ]);
    static FACTS_12: ByThree = by_three([
        Sign::new(0x0, 0x400000000000000), // grease near
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x0),
    ]);
    static CONDITIONS_0: ByThree = by_three([
        Sign::new(0x800010000000400, 0x800100800000000), // retains-gas
        Sign::new(0x400000000, 0x2080200000000000), // wheezes
        Sign::new(0x0, 0x0),
    ]);
    // Not known, each of the book, and one of another book.
    static DEVICES: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x1020021300c00000, 0x0),
        Doubt::new(0x1000020300c00000, 0x1000020300c00000),
        Doubt::new(0x1020021100400000, 0x1020021100400000),
        Doubt::new(0x20021100800000, 0x20021100800000),
        Doubt::new(0x1020001100c00000, 0x1020001100c00000),
        Doubt::new(0x1020021100c00000, 0x20021100800000),
    ]);
    // Not known, each of the book, and one of another book.
    static GROUPS: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x40012820004010, 0x0),
        Doubt::new(0x10000004000, 0x10000004000),
        Doubt::new(0x2820004010, 0x2820004010),
        Doubt::new(0x40010000000010, 0x40010000000010),
        Doubt::new(0x10000004010, 0x10000004010),
    ]);
    // Not known, yes, no.
    static PAIR_0: [Doubt; 4] = [
        Doubt::new(0x10008000000000, 0x0),
        Doubt::new(0x10000000000000, 0x10000000000000),
        Doubt::new(0x8000000000, 0x8000000000),
        Doubt::new(0x0, 0x0),
    ];
    // Not known, yes, no.
    static PAIR_1: [Doubt; 4] = [
        Doubt::new(0x4000000000000, 0x0),
        Doubt::new(0x4000000000000, 0x4000000000000),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    // flow less than the device's least flow: where the answer becomes unknown, and where it is known again.
    static LIMIT_0_STEPS: [[f64; 2]; 16] = padded([0.0; 2], &[
        [-f64::INFINITY, f64::INFINITY],
        [0.4999999995, 0.999999999],
        [0.4999999995, 0.4999999995],
        [0.999999999, 0.999999999],
        [5.999999994, 5.999999994],
        [3.999999996, 9.999999990000001],
        [3.999999996, 3.999999996],
        [9.999999990000001, 9.999999990000001],
        [1.999999998, 1.999999998],
    ]);
    // Which of them: a row for each device; in it the group not known, each group, and one of another book.
    static LIMIT_0_OF: [u16; 32] = padded(0, &[
        0, 0, 0, 0, 0, // no device of the book
        1, 2, 3, 3, 3, // cannula
        4, 4, 4, 4, 4, // mask
        5, 6, 7, 7, 7, // bag
        8, 8, 8, 8, 8, // blow-by
        0, 0, 0, 0, 0, // no device of the book
    ]);
    static LIMIT_0: [Doubt; 4] = [
        Doubt::new(0x400, 0x0),
        Doubt::new(0x400, 0x400),
        Doubt::new(0x400, 0x0),
        Doubt::new(0x0, 0x0),
    ];
    Doubt::new(0x0, 0x0)
        .and(pick(&FLOW, steps(row.number(Measure::Flow), &FLOW_STEPS)))
        .and(pick(&PRESSURE, steps(row.number(Measure::Pressure), &PRESSURE_STEPS)))
        .and(pick(&TEMPERATURE, steps(row.number(Measure::Temperature), &TEMPERATURE_STEPS)))
        .and(pick(&SPO2, steps(row.number(Measure::Spo2), &SPO2_STEPS)))
        .and(pick(&MINUTES_LEFT, steps(row.number(Measure::MinutesLeft), &MINUTES_LEFT_STEPS)))
        .and(pick(&MINUTES_WANTED, steps(row.number(Measure::MinutesWanted), &MINUTES_WANTED_STEPS)))
        .and(FACTS_0.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 0))
        .and(FACTS_3.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 3))
        .and(FACTS_6.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 6))
        .and(FACTS_9.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 9))
        .and(FACTS_12.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 12))
        .and(CONDITIONS_0.doubt(row.has(), row.has_not(), 0))
        .and(pick(&DEVICES, row.device_place(4)))
        .and(pick(&GROUPS, row.group_place(3)))
        .and(pick(&PAIR_0, answer(row.number(Measure::Spo2), Comparison::Equal, row.target_low())))
        .and(pick(&PAIR_1, answer(row.number(Measure::MinutesWanted), Comparison::Less, row.number(Measure::MinutesLeft))))
        .and(pick(&LIMIT_0, steps_between(row.number(Measure::Flow), pick(&LIMIT_0_STEPS, pick(&LIMIT_0_OF, row.device_place(4) * 5 + row.group_place(3)).into()))))
        .link(32, 0)
        .link(33, 2)
        .link(34, 3)
        .link(35, 4)
        .link(36, 37)
        .link(37, 5)
        .link(38, 39)
        .link(39, 40)
        .link(40, 6)
        .link(41, 42)
        .link(42, 7)
        .link(43, 44)
        .link(44, 11)
        .link(45, 12)
        .link(46, 47)
        .link(47, 13)
        .link(48, 14)
        .link(49, 17)
        .link(50, 18)
        .link(51, 19)
        .link(52, 20)
        .link(53, 21)
        .link(54, 22)
        .link(55, 25)
        .link(56, 26)
        .link(57, 58)
        .link(58, 27)
        .link(59, 28)
        .link(60, 61)
        .link(61, 30)
        .link(62, 31)
}

#[inline]
fn page_7(row: &Row) -> Doubt {
    // flow: not known, then from each of these numbers of L/min on.
    const FLOW_STEPS: [f64; 4] = [f64::MIN, 2.4999999975000002, 2.5000000025, 11.999999988];
    static FLOW: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x2010, 0x0),
        Doubt::new(0x10, 0x10),
        Doubt::new(0x2010, 0x2010),
        Doubt::new(0x10, 0x10),
        Doubt::new(0x0, 0x0),
    ]);
    // pressure: not known, then from each of these numbers of pascals on.
    const PRESSURE_STEPS: [f64; 5] = [f64::MIN, 3447378.6431368017, 3447378.650031559, 4999999.995, 6894757.300063118];
    static PRESSURE: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x3100, 0x0),
        Doubt::new(0x100, 0x100),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x100, 0x100),
        Doubt::new(0x2100, 0x2100),
        Doubt::new(0x3100, 0x3100),
    ]);
    // temperature: not known, then from each of these numbers of °C on.
    const TEMPERATURE_STEPS: [f64; 4] = [f64::MIN, -10.000000009999999, 0.0, 5e-324];
    static TEMPERATURE: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0xc00, 0x0),
        Doubt::new(0xc00, 0xc00),
        Doubt::new(0x800, 0x800),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x800, 0x800),
    ]);
    // spo2: not known, then from each of these numbers of percent on.
    const SPO2_STEPS: [f64; 4] = [f64::MIN, 88.00000008800001, 88.1000000881, 97.99999990200001];
    static SPO2: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0xc40, 0x0),
        Doubt::new(0x840, 0x840),
        Doubt::new(0x800, 0x800),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x400, 0x400),
    ]);
    // minutes left: not known, then from each of these numbers of minutes on.
    const MINUTES_LEFT_STEPS: [f64; 2] = [f64::MIN, 60.000000060000005];
    static MINUTES_LEFT: [Doubt; 4] = padded(Doubt::NONE, &[
        Doubt::new(0x100, 0x0),
        Doubt::new(0x100, 0x100),
        Doubt::new(0x0, 0x0),
    ]);
    // minutes wanted: not known, then from each of these numbers of minutes on.
    const MINUTES_WANTED_STEPS: [f64; 4] = [f64::MIN, 0.0, 60.000000060000005, 119.99999988];
    static MINUTES_WANTED: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x280, 0x0),
        Doubt::new(0x200, 0x200),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x200, 0x200),
        Doubt::new(0x280, 0x280),
    ]);
    static FACTS_0: ByThree = by_three([
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x0),
        Sign::new(0x1000, 0x0), // reservoir filled
    ]);
    static FACTS_3: ByThree = by_three([
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x800), // cylinder laid down
    ]);
    static FACTS_9: ByThree = by_three([
        Sign::new(0x40, 0x0), // regulator seated
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x0),
    ]);
    static CONDITIONS_0: ByThree = by_three([
        Sign::new(0x0, 0x20), // retains-gas
        Sign::new(0x0, 0x0),
        Sign::new(0x0, 0x0),
    ]);
    // Not known, each of the book, and one of another book.
    static DEVICES: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x10, 0x0),
        Doubt::new(0x10, 0x10),
        Doubt::new(0x10, 0x10),
        Doubt::new(0x10, 0x10),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x10, 0x10),
    ]);
    // Not known, each of the book, and one of another book.
    static GROUPS: [Doubt; 8] = padded(Doubt::NONE, &[
        Doubt::new(0x10, 0x0),
        Doubt::new(0x10, 0x10),
        Doubt::new(0x10, 0x10),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x10, 0x10),
    ]);
    // flow greater than the device's least flow: where the answer becomes unknown, and where it is known again.
    static LIMIT_0_STEPS: [[f64; 2]; 16] = padded([0.0; 2], &[
        [-f64::INFINITY, f64::INFINITY],
        [0.5000000005, 1.000000001],
        [0.5000000005, 0.5000000005],
        [1.000000001, 1.000000001],
        [6.0000000060000005, 6.0000000060000005],
        [4.000000004, 10.00000001],
        [4.000000004, 4.000000004],
        [10.00000001, 10.00000001],
        [2.000000002, 2.000000002],
    ]);
    // Which of them: a row for each device; in it the group not known, each group, and one of another book.
    static LIMIT_0_OF: [u16; 32] = padded(0, &[
        0, 0, 0, 0, 0, // no device of the book
        1, 2, 3, 3, 3, // cannula
        4, 4, 4, 4, 4, // mask
        5, 6, 7, 7, 7, // bag
        8, 8, 8, 8, 8, // blow-by
        0, 0, 0, 0, 0, // no device of the book
    ]);
    static LIMIT_0: [Doubt; 4] = [
        Doubt::new(0x20, 0x0),
        Doubt::new(0x0, 0x0),
        Doubt::new(0x20, 0x0),
        Doubt::new(0x20, 0x20),
    ];
    Doubt::new(0x0, 0x0)
        .and(pick(&FLOW, steps(row.number(Measure::Flow), &FLOW_STEPS)))
        .and(pick(&PRESSURE, steps(row.number(Measure::Pressure), &PRESSURE_STEPS)))
        .and(pick(&TEMPERATURE, steps(row.number(Measure::Temperature), &TEMPERATURE_STEPS)))
        .and(pick(&SPO2, steps(row.number(Measure::Spo2), &SPO2_STEPS)))
        .and(pick(&MINUTES_LEFT, steps(row.number(Measure::MinutesLeft), &MINUTES_LEFT_STEPS)))
        .and(pick(&MINUTES_WANTED, steps(row.number(Measure::MinutesWanted), &MINUTES_WANTED_STEPS)))
        .and(FACTS_0.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 0))
        .and(FACTS_3.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 3))
        .and(FACTS_9.doubt(u64::from(row.facts().yes()), u64::from(row.facts().no()), 9))
        .and(CONDITIONS_0.doubt(row.has(), row.has_not(), 0))
        .and(pick(&DEVICES, row.device_place(4)))
        .and(pick(&GROUPS, row.group_place(3)))
        .and(pick(&LIMIT_0, steps_between(row.number(Measure::Flow), pick(&LIMIT_0_STEPS, pick(&LIMIT_0_OF, row.device_place(4) * 5 + row.group_place(3)).into()))))
        .link(6, 7)
        .link(7, 0)
        .link(8, 9)
        .link(9, 1)
        .link(10, 11)
        .link(11, 2)
        .link(12, 13)
        .link(13, 3)
}

/// The guards that have no look-ups.
fn walked(broken: Broken, seen: &Observed<'_>) -> Broken {
    broken
        .with(RANDOM_12, never_random_12(seen))
        .with(RANDOM_14, never_random_14(seen))
}

#[doc = "random-0: Random guards (random.md:1)."]
#[doc = "`not (retains-gas and minutes wanted < ride.low) or (flow = comfort and flow in strong)`"]
fn never_random_0(seen: &Observed<'_>) -> Truth {
    !(seen.has_condition(condition::RETAINS_GAS) & less(seen.minutes_wanted, Some(Time::tabled(10.0, TimeUnit::Minute) /* ride.low: 10 min */)))
        | (equal(seen.flow, Some(Flow::tabled(2.5) /* comfort: 2.5 L/min */)) & within(seen.flow, Range { low: Limit::Included(Flow::tabled(4.0)), high: Limit::None } /* at least 4 L/min */))
}

#[doc = "random-1: Random guards (random.md:2)."]
#[doc = "`not (grease near and temperature >= room.low)`"]
fn never_random_1(seen: &Observed<'_>) -> Truth {
    !(seen.fact(Fact::GreaseNear) & at_least(seen.temperature, Some(Temperature::tabled(10.0) /* room.low: 10 °C */)))
}

#[doc = "random-2: Random guards (random.md:3)."]
#[doc = "`not (minutes left >= ride.high and minutes wanted > minutes left and flame near)`"]
fn never_random_2(seen: &Observed<'_>) -> Truth {
    !(at_least(seen.minutes_left, Some(Time::tabled(2.0, TimeUnit::Hour) /* ride.high: 2 h */)) & greater(seen.minutes_wanted, seen.minutes_left) & seen.fact(Fact::FlameNear))
}

#[doc = "random-3: Random guards (random.md:4)."]
#[doc = "`not (minutes wanted < 1.5 h or temperature <= -4 °F or reservoir filled)`"]
fn never_random_3(seen: &Observed<'_>) -> Truth {
    !(less(seen.minutes_wanted, Some(Time::tabled(1.5, TimeUnit::Hour) /* 1.5 h */)) | at_most(seen.temperature, Some(Temperature::tabled(-20.0) /* -20 °C */)) | seen.fact(Fact::ReservoirFilled))
}

#[doc = "random-4: Random guards (random.md:5)."]
#[doc = "`not (pressure in fill or (flow in 6 L/min to 12 L/min and cylinder secured))`"]
fn never_random_4(seen: &Observed<'_>) -> Truth {
    !(within(seen.pressure, Range { low: Limit::Included(Pressure::tabled(5000000.0)), high: Limit::Included(Pressure::tabled(13700000.0)) } /* 50 to 137 bar */) | (within(seen.flow, Range { low: Limit::Included(Flow::tabled(6.0)), high: Limit::Included(Flow::tabled(12.0)) } /* 6 to 12 L/min */) & seen.fact(Fact::CylinderSecured)))
}

#[doc = "random-5: Random guards (random.md:6)."]
#[doc = "`not not (device is bag and flame near)`"]
fn never_random_5(seen: &Observed<'_>) -> Truth {
    !!(seen.device_is(device::BAG) & seen.fact(Fact::FlameNear))
}

#[doc = "random-6: Random guards (random.md:7)."]
#[doc = "`not not minutes left >= ride.low`"]
fn never_random_6(seen: &Observed<'_>) -> Truth {
    !!at_least(seen.minutes_left, Some(Time::tabled(10.0, TimeUnit::Minute) /* ride.low: 10 min */))
}

#[doc = "random-7: Random guards (random.md:8)."]
#[doc = "`not spo2 > target.low`"]
fn never_random_7(seen: &Observed<'_>) -> Truth {
    !greater(seen.saturation(), seen.target_low())
}

#[doc = "random-8: Random guards (random.md:9)."]
#[doc = "`minutes left <= wait or (cylinder laid down and device is mask) or not temperature in frost`"]
fn never_random_8(seen: &Observed<'_>) -> Truth {
    at_most(seen.minutes_left, Some(Time::tabled(90.0, TimeUnit::Second) /* wait: 90 s */))
        | (seen.fact(Fact::CylinderLaidDown) & seen.device_is(device::MASK))
        | !within(seen.temperature, Range { low: Limit::None, high: Limit::Excluded(Temperature::tabled(-10.0)) } /* under -10 °C */)
}

#[doc = "random-9: Random guards (random.md:10)."]
#[doc = "`pressure <= 5 MPa and group is newborn and (minutes wanted < 1.5 min or spo2 in safe)`"]
fn never_random_9(seen: &Observed<'_>) -> Truth {
    at_most(seen.pressure, Some(Pressure::tabled(5000000.0) /* 50 bar */))
        & seen.group_is(group::NEWBORN)
        & (less(seen.minutes_wanted, Some(Time::tabled(1.5, TimeUnit::Minute) /* 1.5 min */)) | within(seen.saturation(), Range { low: Limit::Excluded(Percent::tabled(88.0)), high: Limit::None } /* over 88 % */))
}

#[doc = "random-10: Random guards (random.md:11)."]
#[doc = "`cylinder open or not device is blow-by`"]
fn never_random_10(seen: &Observed<'_>) -> Truth {
    seen.fact(Fact::CylinderOpen)
        | !seen.device_is(device::BLOW_BY)
}

#[doc = "random-11: Random guards (random.md:12)."]
#[doc = "`(flow <= 12 L/min or temperature >= 32 °F) and cylinder laid down`"]
fn never_random_11(seen: &Observed<'_>) -> Truth {
    (at_most(seen.flow, Some(Flow::tabled(12.0) /* 12 L/min */)) | at_least(seen.temperature, Some(Temperature::tabled(0.0) /* 0 °C */)))
        & seen.fact(Fact::CylinderLaidDown)
}

#[doc = "random-12: Random guards (random.md:13)."]
#[doc = "`(temperature > -20 °C and pressure in 0 bar to 0 psi) or flow = device.most-flow`"]
fn never_random_12(seen: &Observed<'_>) -> Truth {
    (greater(seen.temperature, Some(Temperature::tabled(-20.0) /* -20 °C */)) & within(seen.pressure, Range { low: Limit::Included(Pressure::tabled(0.0)), high: Limit::Included(Pressure::tabled(0.0)) } /* 0 to 0 psi */))
        | seen.device_flow(Guards.rules(), |limits| equal(seen.flow, limits.high.value()))
}

#[doc = "random-13: Random guards (random.md:14)."]
#[doc = "`minutes wanted = minutes left or pressure <= 137 bar or not temperature in frost`"]
fn never_random_13(seen: &Observed<'_>) -> Truth {
    equal(seen.minutes_wanted, seen.minutes_left)
        | at_most(seen.pressure, Some(Pressure::tabled(13700000.0) /* 137 bar */))
        | !within(seen.temperature, Range { low: Limit::None, high: Limit::Excluded(Temperature::tabled(-10.0)) } /* under -10 °C */)
}

#[doc = "random-14: Random guards (random.md:15)."]
#[doc = "`not (not flow = device.most-flow or wheezes)`"]
fn never_random_14(seen: &Observed<'_>) -> Truth {
    !(!seen.device_flow(Guards.rules(), |limits| equal(seen.flow, limits.high.value())) | seen.has_condition(condition::WHEEZES))
}

#[doc = "random-15: Random guards (random.md:16)."]
#[doc = "`not pressure > 10 MPa and not temperature in under -10 °C`"]
fn never_random_15(seen: &Observed<'_>) -> Truth {
    !greater(seen.pressure, Some(Pressure::tabled(10000000.0) /* 100 bar */))
        & !within(seen.temperature, Range { low: Limit::None, high: Limit::Excluded(Temperature::tabled(-10.0)) } /* under -10 °C */)
}

#[doc = "random-16: Random guards (random.md:17)."]
#[doc = "`not not retains-gas`"]
fn never_random_16(seen: &Observed<'_>) -> Truth {
    !!seen.has_condition(condition::RETAINS_GAS)
}

#[doc = "random-17: Random guards (random.md:18)."]
#[doc = "`not (spo2 in 0 % to 88 % or pressure <= fill.low)`"]
fn never_random_17(seen: &Observed<'_>) -> Truth {
    !(within(seen.saturation(), Range { low: Limit::Included(Percent::tabled(0.0)), high: Limit::Included(Percent::tabled(88.0)) } /* 0 to 88 % */) | at_most(seen.pressure, Some(Pressure::tabled(5000000.0) /* fill.low: 50 bar */)))
}

#[doc = "random-18: Random guards (random.md:19)."]
#[doc = "`not (temperature in room or device is bag) or (not minutes left in ride or minutes left in 0 s to 1.5 min)`"]
fn never_random_18(seen: &Observed<'_>) -> Truth {
    !(within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(10.0)), high: Limit::Included(Temperature::tabled(40.0)) } /* 10 to 40 °C */) | seen.device_is(device::BAG))
        | (!within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(10.0, TimeUnit::Minute)), high: Limit::Included(Time::tabled(2.0, TimeUnit::Hour)) } /* 10 min to 2 h */) | within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(0.0, TimeUnit::Second)), high: Limit::Included(Time::tabled(1.5, TimeUnit::Minute)) } /* 0 s to 1.5 min */))
}

#[doc = "random-19: Random guards (random.md:20)."]
#[doc = "`flow <= device.most-flow or not (temperature in at most 104 °F and (pressure != reserve and flow > strong.low))`"]
fn never_random_19(seen: &Observed<'_>) -> Truth {
    seen.device_flow(Guards.rules(), |limits| at_most(seen.flow, limits.high.value()))
        | !(within(seen.temperature, Range { low: Limit::None, high: Limit::Included(Temperature::tabled(40.0)) } /* at most 40 °C */) & (not_equal(seen.pressure, Some(Pressure::tabled(3447378.64658418) /* reserve: 500 psi */)) & greater(seen.flow, Some(Flow::tabled(4.0) /* strong.low: 4 L/min */))))
}

#[doc = "random-20: Random guards (random.md:21)."]
#[doc = "`wheezes or flow < device.least-flow or cylinder secured or pressure in fill or (pressure != 500 psi and reservoir filled)`"]
fn never_random_20(seen: &Observed<'_>) -> Truth {
    seen.has_condition(condition::WHEEZES)
        | seen.device_flow(Guards.rules(), |limits| less(seen.flow, limits.low.value()))
        | seen.fact(Fact::CylinderSecured)
        | within(seen.pressure, Range { low: Limit::Included(Pressure::tabled(5000000.0)), high: Limit::Included(Pressure::tabled(13700000.0)) } /* 50 to 137 bar */)
        | (not_equal(seen.pressure, Some(Pressure::tabled(3447378.64658418) /* 500 psi */)) & seen.fact(Fact::ReservoirFilled))
}

#[doc = "random-21: Random guards (random.md:22)."]
#[doc = "`not device is mask`"]
fn never_random_21(seen: &Observed<'_>) -> Truth {
    !seen.device_is(device::MASK)
}

#[doc = "random-22: Random guards (random.md:23)."]
#[doc = "`not not group is newborn`"]
fn never_random_22(seen: &Observed<'_>) -> Truth {
    !!seen.group_is(group::NEWBORN)
}

#[doc = "random-23: Random guards (random.md:24)."]
#[doc = "`not pressure < fill.high`"]
fn never_random_23(seen: &Observed<'_>) -> Truth {
    !less(seen.pressure, Some(Pressure::tabled(13700000.0) /* fill.high: 137 bar */))
}

#[doc = "random-24: Random guards (random.md:25)."]
#[doc = "`not (device is blow-by and (device is mask and minutes wanted > ride.high))`"]
fn never_random_24(seen: &Observed<'_>) -> Truth {
    !(seen.device_is(device::BLOW_BY) & (seen.device_is(device::MASK) & greater(seen.minutes_wanted, Some(Time::tabled(2.0, TimeUnit::Hour) /* ride.high: 2 h */))))
}

#[doc = "random-25: Random guards (random.md:26)."]
#[doc = "`not group is newborn and (minutes left < wait and temperature in frost)`"]
fn never_random_25(seen: &Observed<'_>) -> Truth {
    !seen.group_is(group::NEWBORN)
        & (less(seen.minutes_left, Some(Time::tabled(90.0, TimeUnit::Second) /* wait: 90 s */)) & within(seen.temperature, Range { low: Limit::None, high: Limit::Excluded(Temperature::tabled(-10.0)) } /* under -10 °C */))
}

#[doc = "random-26: Random guards (random.md:27)."]
#[doc = "`not minutes wanted >= minutes left and (temperature != -4 °F or (outlet clear or minutes wanted in 0 s to 0 h))`"]
fn never_random_26(seen: &Observed<'_>) -> Truth {
    !at_least(seen.minutes_wanted, seen.minutes_left)
        & (not_equal(seen.temperature, Some(Temperature::tabled(-20.0) /* -20 °C */)) | (seen.fact(Fact::OutletClear) | within(seen.minutes_wanted, Range { low: Limit::Included(Time::tabled(0.0, TimeUnit::Second)), high: Limit::Included(Time::tabled(0.0, TimeUnit::Hour)) } /* 0 s to 0 h */)))
}

#[doc = "random-27: Random guards (random.md:28)."]
#[doc = "`not (cylinder open and temperature in room)`"]
fn never_random_27(seen: &Observed<'_>) -> Truth {
    !(seen.fact(Fact::CylinderOpen) & within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(10.0)), high: Limit::Included(Temperature::tabled(40.0)) } /* 10 to 40 °C */))
}

#[doc = "random-28: Random guards (random.md:29)."]
#[doc = "`(retains-gas or washer fitted) and (minutes left > ride.low and group is newborn and not not device is bag)`"]
fn never_random_28(seen: &Observed<'_>) -> Truth {
    (seen.has_condition(condition::RETAINS_GAS) | seen.fact(Fact::WasherFitted))
        & (greater(seen.minutes_left, Some(Time::tabled(10.0, TimeUnit::Minute) /* ride.low: 10 min */)) & seen.group_is(group::NEWBORN) & !!seen.device_is(device::BAG))
}

#[doc = "random-29: Random guards (random.md:30)."]
#[doc = "`not not (flow > 6 L/min and reservoir filled)`"]
fn never_random_29(seen: &Observed<'_>) -> Truth {
    !!(greater(seen.flow, Some(Flow::tabled(6.0) /* 6 L/min */)) & seen.fact(Fact::ReservoirFilled))
}

#[doc = "random-30: Random guards (random.md:31)."]
#[doc = "`not (grease near and device on patient) or (group is newborn and (cylinder secured or spo2 in safe))`"]
fn never_random_30(seen: &Observed<'_>) -> Truth {
    !(seen.fact(Fact::GreaseNear) & seen.fact(Fact::DeviceOnPatient))
        | (seen.group_is(group::NEWBORN) & (seen.fact(Fact::CylinderSecured) | within(seen.saturation(), Range { low: Limit::Excluded(Percent::tabled(88.0)), high: Limit::None } /* over 88 % */)))
}

#[doc = "random-31: Random guards (random.md:32)."]
#[doc = "`not (temperature != 10 °C and device is blow-by)`"]
fn never_random_31(seen: &Observed<'_>) -> Truth {
    !(not_equal(seen.temperature, Some(Temperature::tabled(10.0) /* 10 °C */)) & seen.device_is(device::BLOW_BY))
}

#[doc = "random-32: Random guards (random.md:33)."]
#[doc = "`(minutes left < 90 s or spo2 >= urgent or pressure = 10000 kPa) and (spo2 in safe and device is mask)`"]
fn never_random_32(seen: &Observed<'_>) -> Truth {
    (less(seen.minutes_left, Some(Time::tabled(90.0, TimeUnit::Second) /* 90 s */)) | at_least(seen.saturation(), Some(Percent::tabled(85.0) /* urgent: 85 % */)) | equal(seen.pressure, Some(Pressure::tabled(10000000.0) /* 100 bar */)))
        & (within(seen.saturation(), Range { low: Limit::Excluded(Percent::tabled(88.0)), high: Limit::None } /* over 88 % */) & seen.device_is(device::MASK))
}

#[doc = "random-33: Random guards (random.md:34)."]
#[doc = "`cylinder open`"]
fn never_random_33(seen: &Observed<'_>) -> Truth {
    seen.fact(Fact::CylinderOpen)
}

#[doc = "random-34: Random guards (random.md:35)."]
#[doc = "`not (pressure in over 10000 kPa and regulator seated)`"]
fn never_random_34(seen: &Observed<'_>) -> Truth {
    !(within(seen.pressure, Range { low: Limit::Excluded(Pressure::tabled(10000000.0)), high: Limit::None } /* over 100 bar */) & seen.fact(Fact::RegulatorSeated))
}

#[doc = "random-35: Random guards (random.md:36)."]
#[doc = "`not (not spo2 >= 88 % and device is mask)`"]
fn never_random_35(seen: &Observed<'_>) -> Truth {
    !(!at_least(seen.saturation(), Some(Percent::tabled(88.0) /* 88 % */)) & seen.device_is(device::MASK))
}

#[doc = "random-36: Random guards (random.md:37)."]
#[doc = "`(device is bag or temperature > frost.high) and group is adult`"]
fn never_random_36(seen: &Observed<'_>) -> Truth {
    (seen.device_is(device::BAG) | greater(seen.temperature, Some(Temperature::tabled(-10.0) /* frost.high: -10 °C */)))
        & seen.group_is(group::ADULT)
}

#[doc = "random-37: Random guards (random.md:38)."]
#[doc = "`minutes left in at least 120 min and pressure <= fill.low`"]
fn never_random_37(seen: &Observed<'_>) -> Truth {
    within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(120.0, TimeUnit::Minute)), high: Limit::None } /* at least 120 min */)
        & at_most(seen.pressure, Some(Pressure::tabled(5000000.0) /* fill.low: 50 bar */))
}

#[doc = "random-38: Random guards (random.md:39)."]
#[doc = "`device has reservoir`"]
fn never_random_38(seen: &Observed<'_>) -> Truth {
    seen.device_has_reservoir(Guards.rules())
}

#[doc = "random-39: Random guards (random.md:40)."]
#[doc = "`not pressure != reserve or pressure = reserve`"]
fn never_random_39(seen: &Observed<'_>) -> Truth {
    !not_equal(seen.pressure, Some(Pressure::tabled(3447378.64658418) /* reserve: 500 psi */))
        | equal(seen.pressure, Some(Pressure::tabled(3447378.64658418) /* reserve: 500 psi */))
}

#[doc = "random-40: Random guards (random.md:41)."]
#[doc = "`not minutes left in ride and (flow >= device.least-flow and spo2 >= 100 %)`"]
fn never_random_40(seen: &Observed<'_>) -> Truth {
    !within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(10.0, TimeUnit::Minute)), high: Limit::Included(Time::tabled(2.0, TimeUnit::Hour)) } /* 10 min to 2 h */)
        & (seen.device_flow(Guards.rules(), |limits| at_least(seen.flow, limits.low.value())) & at_least(seen.saturation(), Some(Percent::tabled(100.0) /* 100 % */)))
}

#[doc = "random-41: Random guards (random.md:42)."]
#[doc = "`spo2 < 100 % and not device is mask`"]
fn never_random_41(seen: &Observed<'_>) -> Truth {
    less(seen.saturation(), Some(Percent::tabled(100.0) /* 100 % */))
        & !seen.device_is(device::MASK)
}

#[doc = "random-42: Random guards (random.md:43)."]
#[doc = "`pressure in 100 bar to 10000 kPa or flow in strong or (group is adult or minutes left in 0 min to 1.5 h)`"]
fn never_random_42(seen: &Observed<'_>) -> Truth {
    within(seen.pressure, Range { low: Limit::Included(Pressure::tabled(10000000.0)), high: Limit::Included(Pressure::tabled(10000000.0)) } /* 100 to 100 bar */)
        | within(seen.flow, Range { low: Limit::Included(Flow::tabled(4.0)), high: Limit::None } /* at least 4 L/min */)
        | (seen.group_is(group::ADULT) | within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(0.0, TimeUnit::Minute)), high: Limit::Included(Time::tabled(1.5, TimeUnit::Hour)) } /* 0 min to 1.5 h */))
}

#[doc = "random-43: Random guards (random.md:44)."]
#[doc = "`(minutes wanted in at most 0 min and flow = comfort) or (cylinder open and reservoir filled) or (device is cannula or minutes wanted > ride.low)`"]
fn never_random_43(seen: &Observed<'_>) -> Truth {
    (within(seen.minutes_wanted, Range { low: Limit::None, high: Limit::Included(Time::tabled(0.0, TimeUnit::Minute)) } /* at most 0 min */) & equal(seen.flow, Some(Flow::tabled(2.5) /* comfort: 2.5 L/min */)))
        | (seen.fact(Fact::CylinderOpen) & seen.fact(Fact::ReservoirFilled))
        | (seen.device_is(device::CANNULA) | greater(seen.minutes_wanted, Some(Time::tabled(10.0, TimeUnit::Minute) /* ride.low: 10 min */)))
}

#[doc = "random-44: Random guards (random.md:45)."]
#[doc = "`regulator pressurised and (minutes left in at least 15 min or pressure > 5 MPa) and (minutes wanted >= ride.high or minutes wanted >= minutes left)`"]
fn never_random_44(seen: &Observed<'_>) -> Truth {
    seen.fact(Fact::RegulatorPressurised)
        & (within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(15.0, TimeUnit::Minute)), high: Limit::None } /* at least 15 min */) | greater(seen.pressure, Some(Pressure::tabled(5000000.0) /* 50 bar */)))
        & (at_least(seen.minutes_wanted, Some(Time::tabled(2.0, TimeUnit::Hour) /* ride.high: 2 h */)) | at_least(seen.minutes_wanted, seen.minutes_left))
}

#[doc = "random-45: Random guards (random.md:46)."]
#[doc = "`spo2 in safe and spo2 >= safe.low and (flow >= strong.low or device is mask)`"]
fn never_random_45(seen: &Observed<'_>) -> Truth {
    within(seen.saturation(), Range { low: Limit::Excluded(Percent::tabled(88.0)), high: Limit::None } /* over 88 % */)
        & at_least(seen.saturation(), Some(Percent::tabled(88.0) /* safe.low: 88 % */))
        & (at_least(seen.flow, Some(Flow::tabled(4.0) /* strong.low: 4 L/min */)) | seen.device_is(device::MASK))
}

#[doc = "random-46: Random guards (random.md:47)."]
#[doc = "`not (pressure >= reserve or flame near)`"]
fn never_random_46(seen: &Observed<'_>) -> Truth {
    !(at_least(seen.pressure, Some(Pressure::tabled(3447378.64658418) /* reserve: 500 psi */)) | seen.fact(Fact::FlameNear))
}

#[doc = "random-47: Random guards (random.md:48)."]
#[doc = "`not not pressure < fill.high and (flow <= device.most-flow or temperature > -20 °C)`"]
fn never_random_47(seen: &Observed<'_>) -> Truth {
    !!less(seen.pressure, Some(Pressure::tabled(13700000.0) /* fill.high: 137 bar */))
        & (seen.device_flow(Guards.rules(), |limits| at_most(seen.flow, limits.high.value())) | greater(seen.temperature, Some(Temperature::tabled(-20.0) /* -20 °C */)))
}

#[doc = "random-48: Random guards (random.md:49)."]
#[doc = "`not not spo2 in over 94 %`"]
fn never_random_48(seen: &Observed<'_>) -> Truth {
    !!within(seen.saturation(), Range { low: Limit::Excluded(Percent::tabled(94.0)), high: Limit::None } /* over 94 % */)
}

#[doc = "random-49: Random guards (random.md:50)."]
#[doc = "`not device has reservoir or (pressure > 13700 kPa and group is child) or (minutes left < 1 h or flow in 12 L/min to 15 L/min)`"]
fn never_random_49(seen: &Observed<'_>) -> Truth {
    !seen.device_has_reservoir(Guards.rules())
        | (greater(seen.pressure, Some(Pressure::tabled(13700000.0) /* 137 bar */)) & seen.group_is(group::CHILD))
        | (less(seen.minutes_left, Some(Time::tabled(1.0, TimeUnit::Hour) /* 1 h */)) | within(seen.flow, Range { low: Limit::Included(Flow::tabled(12.0)), high: Limit::Included(Flow::tabled(15.0)) } /* 12 to 15 L/min */))
}

#[doc = "random-50: Random guards (random.md:51)."]
#[doc = "`(device is cannula and device on patient) or (temperature in room or group is newborn)`"]
fn never_random_50(seen: &Observed<'_>) -> Truth {
    (seen.device_is(device::CANNULA) & seen.fact(Fact::DeviceOnPatient))
        | (within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(10.0)), high: Limit::Included(Temperature::tabled(40.0)) } /* 10 to 40 °C */) | seen.group_is(group::NEWBORN))
}

#[doc = "random-51: Random guards (random.md:52)."]
#[doc = "`spo2 in safe and device is blow-by and temperature < 32 °F`"]
fn never_random_51(seen: &Observed<'_>) -> Truth {
    within(seen.saturation(), Range { low: Limit::Excluded(Percent::tabled(88.0)), high: Limit::None } /* over 88 % */)
        & seen.device_is(device::BLOW_BY)
        & less(seen.temperature, Some(Temperature::tabled(0.0) /* 0 °C */))
}

#[doc = "random-52: Random guards (random.md:53)."]
#[doc = "`not (outlet clear and temperature >= 40 °C)`"]
fn never_random_52(seen: &Observed<'_>) -> Truth {
    !(seen.fact(Fact::OutletClear) & at_least(seen.temperature, Some(Temperature::tabled(40.0) /* 40 °C */)))
}

#[doc = "random-53: Random guards (random.md:54)."]
#[doc = "`((device is cannula and minutes left in ride) or (temperature > 40 °C or group is child)) and (device is blow-by or (cylinder open and device is mask))`"]
fn never_random_53(seen: &Observed<'_>) -> Truth {
    ((seen.device_is(device::CANNULA) & within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(10.0, TimeUnit::Minute)), high: Limit::Included(Time::tabled(2.0, TimeUnit::Hour)) } /* 10 min to 2 h */)) | (greater(seen.temperature, Some(Temperature::tabled(40.0) /* 40 °C */)) | seen.group_is(group::CHILD)))
        & (seen.device_is(device::BLOW_BY) | (seen.fact(Fact::CylinderOpen) & seen.device_is(device::MASK)))
}

#[doc = "random-54: Random guards (random.md:55)."]
#[doc = "`device has reservoir or (minutes wanted >= ride.high and temperature != 40 °C) or group is child`"]
fn never_random_54(seen: &Observed<'_>) -> Truth {
    seen.device_has_reservoir(Guards.rules())
        | (at_least(seen.minutes_wanted, Some(Time::tabled(2.0, TimeUnit::Hour) /* ride.high: 2 h */)) & not_equal(seen.temperature, Some(Temperature::tabled(40.0) /* 40 °C */)))
        | seen.group_is(group::CHILD)
}

#[doc = "random-55: Random guards (random.md:56)."]
#[doc = "`not temperature != room.low`"]
fn never_random_55(seen: &Observed<'_>) -> Truth {
    !not_equal(seen.temperature, Some(Temperature::tabled(10.0) /* room.low: 10 °C */))
}

#[doc = "random-56: Random guards (random.md:57)."]
#[doc = "`cylinder secured or device is cannula or temperature <= room.low or (not minutes left <= minutes wanted and reservoir filled)`"]
fn never_random_56(seen: &Observed<'_>) -> Truth {
    seen.fact(Fact::CylinderSecured)
        | seen.device_is(device::CANNULA)
        | at_most(seen.temperature, Some(Temperature::tabled(10.0) /* room.low: 10 °C */))
        | (!at_most(seen.minutes_left, seen.minutes_wanted) & seen.fact(Fact::ReservoirFilled))
}

#[doc = "random-57: Random guards (random.md:58)."]
#[doc = "`not pressure = 5 MPa`"]
fn never_random_57(seen: &Observed<'_>) -> Truth {
    !equal(seen.pressure, Some(Pressure::tabled(5000000.0) /* 50 bar */))
}

#[doc = "random-58: Random guards (random.md:59)."]
#[doc = "`not (not retains-gas or temperature in -4 °F to 32 °F)`"]
fn never_random_58(seen: &Observed<'_>) -> Truth {
    !(!seen.has_condition(condition::RETAINS_GAS) | within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(-20.0)), high: Limit::Included(Temperature::tabled(0.0)) } /* -20 to 0 °C */))
}

#[doc = "random-59: Random guards (random.md:60)."]
#[doc = "`not group is newborn`"]
fn never_random_59(seen: &Observed<'_>) -> Truth {
    !seen.group_is(group::NEWBORN)
}

#[doc = "random-60: Random guards (random.md:61)."]
#[doc = "`(wheezes or (minutes left <= 60 min or temperature >= 40 °C)) and (flow in strong or pressure = fill.low)`"]
fn never_random_60(seen: &Observed<'_>) -> Truth {
    (seen.has_condition(condition::WHEEZES) | (at_most(seen.minutes_left, Some(Time::tabled(60.0, TimeUnit::Minute) /* 60 min */)) | at_least(seen.temperature, Some(Temperature::tabled(40.0) /* 40 °C */))))
        & (within(seen.flow, Range { low: Limit::Included(Flow::tabled(4.0)), high: Limit::None } /* at least 4 L/min */) | equal(seen.pressure, Some(Pressure::tabled(5000000.0) /* fill.low: 50 bar */)))
}

#[doc = "random-61: Random guards (random.md:62)."]
#[doc = "`not (minutes left = 15 min and group is child)`"]
fn never_random_61(seen: &Observed<'_>) -> Truth {
    !(equal(seen.minutes_left, Some(Time::tabled(15.0, TimeUnit::Minute) /* 15 min */)) & seen.group_is(group::CHILD))
}

#[doc = "random-62: Random guards (random.md:63)."]
#[doc = "`not (group is adult and pressure > 10000 kPa)`"]
fn never_random_62(seen: &Observed<'_>) -> Truth {
    !(seen.group_is(group::ADULT) & greater(seen.pressure, Some(Pressure::tabled(10000000.0) /* 100 bar */)))
}

#[doc = "random-63: Random guards (random.md:64)."]
#[doc = "`(flow < device.most-flow and minutes wanted > 2 h) or minutes wanted < 2 h or minutes left >= 0 s`"]
fn never_random_63(seen: &Observed<'_>) -> Truth {
    (seen.device_flow(Guards.rules(), |limits| less(seen.flow, limits.high.value())) & greater(seen.minutes_wanted, Some(Time::tabled(2.0, TimeUnit::Hour) /* 2 h */)))
        | less(seen.minutes_wanted, Some(Time::tabled(2.0, TimeUnit::Hour) /* 2 h */))
        | at_least(seen.minutes_left, Some(Time::tabled(0.0, TimeUnit::Second) /* 0 s */))
}

#[doc = "random-64: Random guards (random.md:65)."]
#[doc = "`minutes left in ride or not regulator pressurised`"]
fn never_random_64(seen: &Observed<'_>) -> Truth {
    within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(10.0, TimeUnit::Minute)), high: Limit::Included(Time::tabled(2.0, TimeUnit::Hour)) } /* 10 min to 2 h */)
        | !seen.fact(Fact::RegulatorPressurised)
}

#[doc = "random-65: Random guards (random.md:66)."]
#[doc = "`not flow in strong and pressure != fill.high`"]
fn never_random_65(seen: &Observed<'_>) -> Truth {
    !within(seen.flow, Range { low: Limit::Included(Flow::tabled(4.0)), high: Limit::None } /* at least 4 L/min */)
        & not_equal(seen.pressure, Some(Pressure::tabled(13700000.0) /* fill.high: 137 bar */))
}

#[doc = "random-66: Random guards (random.md:67)."]
#[doc = "`not ((grease near or (cylinder open or minutes wanted != 0 min)) and flow in at least 0.5 L/min) or (device is blow-by or spo2 in 88 % to 98 %)`"]
fn never_random_66(seen: &Observed<'_>) -> Truth {
    !((seen.fact(Fact::GreaseNear) | (seen.fact(Fact::CylinderOpen) | not_equal(seen.minutes_wanted, Some(Time::tabled(0.0, TimeUnit::Minute) /* 0 min */)))) & within(seen.flow, Range { low: Limit::Included(Flow::tabled(0.5)), high: Limit::None } /* at least 0.5 L/min */))
        | (seen.device_is(device::BLOW_BY) | within(seen.saturation(), Range { low: Limit::Included(Percent::tabled(88.0)), high: Limit::Included(Percent::tabled(98.0)) } /* 88 to 98 % */))
}

#[doc = "random-67: Random guards (random.md:68)."]
#[doc = "`not not spo2 >= 92 %`"]
fn never_random_67(seen: &Observed<'_>) -> Truth {
    !!at_least(seen.saturation(), Some(Percent::tabled(92.0) /* 92 % */))
}

#[doc = "random-68: Random guards (random.md:69)."]
#[doc = "`(flow <= 4 L/min and (retains-gas and pressure <= 137 bar)) or (temperature <= 50 °C and device is blow-by)`"]
fn never_random_68(seen: &Observed<'_>) -> Truth {
    (at_most(seen.flow, Some(Flow::tabled(4.0) /* 4 L/min */)) & (seen.has_condition(condition::RETAINS_GAS) & at_most(seen.pressure, Some(Pressure::tabled(13700000.0) /* 137 bar */))))
        | (at_most(seen.temperature, Some(Temperature::tabled(50.0) /* 50 °C */)) & seen.device_is(device::BLOW_BY))
}

#[doc = "random-69: Random guards (random.md:70)."]
#[doc = "`not (group is newborn or pressure <= fill.low)`"]
fn never_random_69(seen: &Observed<'_>) -> Truth {
    !(seen.group_is(group::NEWBORN) | at_most(seen.pressure, Some(Pressure::tabled(5000000.0) /* fill.low: 50 bar */)))
}

#[doc = "random-70: Random guards (random.md:71)."]
#[doc = "`device is mask or device is cannula or spo2 = urgent or minutes left <= 1.5 h`"]
fn never_random_70(seen: &Observed<'_>) -> Truth {
    seen.device_is(device::MASK)
        | seen.device_is(device::CANNULA)
        | equal(seen.saturation(), Some(Percent::tabled(85.0) /* urgent: 85 % */))
        | at_most(seen.minutes_left, Some(Time::tabled(1.5, TimeUnit::Hour) /* 1.5 h */))
}

#[doc = "random-71: Random guards (random.md:72)."]
#[doc = "`not (minutes wanted = ride.low or (regulator pressurised or not (spo2 = urgent or cylinder secured)))`"]
fn never_random_71(seen: &Observed<'_>) -> Truth {
    !(equal(seen.minutes_wanted, Some(Time::tabled(10.0, TimeUnit::Minute) /* ride.low: 10 min */)) | (seen.fact(Fact::RegulatorPressurised) | !(equal(seen.saturation(), Some(Percent::tabled(85.0) /* urgent: 85 % */)) | seen.fact(Fact::CylinderSecured))))
}

#[doc = "random-72: Random guards (random.md:73)."]
#[doc = "`not (temperature > frost.high or minutes wanted <= wait)`"]
fn never_random_72(seen: &Observed<'_>) -> Truth {
    !(greater(seen.temperature, Some(Temperature::tabled(-10.0) /* frost.high: -10 °C */)) | at_most(seen.minutes_wanted, Some(Time::tabled(90.0, TimeUnit::Second) /* wait: 90 s */)))
}

#[doc = "random-73: Random guards (random.md:74)."]
#[doc = "`not (device is bag and minutes wanted in at most 90 s)`"]
fn never_random_73(seen: &Observed<'_>) -> Truth {
    !(seen.device_is(device::BAG) & within(seen.minutes_wanted, Range { low: Limit::None, high: Limit::Included(Time::tabled(90.0, TimeUnit::Second)) } /* at most 90 s */))
}

#[doc = "random-74: Random guards (random.md:75)."]
#[doc = "`not ((minutes wanted in at most 1 h and temperature in room) or device is mask)`"]
fn never_random_74(seen: &Observed<'_>) -> Truth {
    !((within(seen.minutes_wanted, Range { low: Limit::None, high: Limit::Included(Time::tabled(1.0, TimeUnit::Hour)) } /* at most 1 h */) & within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(10.0)), high: Limit::Included(Temperature::tabled(40.0)) } /* 10 to 40 °C */)) | seen.device_is(device::MASK))
}

#[doc = "random-75: Random guards (random.md:76)."]
#[doc = "`minutes wanted > 90 s or device is cannula`"]
fn never_random_75(seen: &Observed<'_>) -> Truth {
    greater(seen.minutes_wanted, Some(Time::tabled(90.0, TimeUnit::Second) /* 90 s */))
        | seen.device_is(device::CANNULA)
}

#[doc = "random-76: Random guards (random.md:77)."]
#[doc = "`(pressure <= 0 bar and wheezes) or (device is mask and device is cannula)`"]
fn never_random_76(seen: &Observed<'_>) -> Truth {
    (at_most(seen.pressure, Some(Pressure::tabled(0.0) /* 0 psi */)) & seen.has_condition(condition::WHEEZES))
        | (seen.device_is(device::MASK) & seen.device_is(device::CANNULA))
}

#[doc = "random-77: Random guards (random.md:78)."]
#[doc = "`spo2 < urgent or not (cylinder standing free or flow in 0 L/min to 4000 mL/min)`"]
fn never_random_77(seen: &Observed<'_>) -> Truth {
    less(seen.saturation(), Some(Percent::tabled(85.0) /* urgent: 85 % */))
        | !(seen.fact(Fact::CylinderStandingFree) | within(seen.flow, Range { low: Limit::Included(Flow::tabled(0.0)), high: Limit::Included(Flow::tabled(4.0)) } /* 0 to 4 L/min */))
}

#[doc = "random-78: Random guards (random.md:79)."]
#[doc = "`not (flow > 1 L/min or device is cannula)`"]
fn never_random_78(seen: &Observed<'_>) -> Truth {
    !(greater(seen.flow, Some(Flow::tabled(1.0) /* 1 L/min */)) | seen.device_is(device::CANNULA))
}

#[doc = "random-79: Random guards (random.md:80)."]
#[doc = "`not outlet clear`"]
fn never_random_79(seen: &Observed<'_>) -> Truth {
    !seen.fact(Fact::OutletClear)
}

#[doc = "random-80: Random guards (random.md:81)."]
#[doc = "`not (minutes wanted >= 1 h and pressure < 2000 psi)`"]
fn never_random_80(seen: &Observed<'_>) -> Truth {
    !(at_least(seen.minutes_wanted, Some(Time::tabled(1.0, TimeUnit::Hour) /* 1 h */)) & less(seen.pressure, Some(Pressure::tabled(13789514.58633672) /* 2000 psi */)))
}

#[doc = "random-81: Random guards (random.md:82)."]
#[doc = "`not device is cannula and wheezes and (group is child or flow < strong.low)`"]
fn never_random_81(seen: &Observed<'_>) -> Truth {
    !seen.device_is(device::CANNULA)
        & seen.has_condition(condition::WHEEZES)
        & (seen.group_is(group::CHILD) | less(seen.flow, Some(Flow::tabled(4.0) /* strong.low: 4 L/min */)))
}

#[doc = "random-82: Random guards (random.md:83)."]
#[doc = "`minutes left in ride and (pressure in 10 MPa to 10000 kPa or (minutes left in under 1.5 h and device is bag))`"]
fn never_random_82(seen: &Observed<'_>) -> Truth {
    within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(10.0, TimeUnit::Minute)), high: Limit::Included(Time::tabled(2.0, TimeUnit::Hour)) } /* 10 min to 2 h */)
        & (within(seen.pressure, Range { low: Limit::Included(Pressure::tabled(10000000.0)), high: Limit::Included(Pressure::tabled(10000000.0)) } /* 100 to 100 bar */) | (within(seen.minutes_left, Range { low: Limit::None, high: Limit::Excluded(Time::tabled(1.5, TimeUnit::Hour)) } /* under 1.5 h */) & seen.device_is(device::BAG)))
}

#[doc = "random-83: Random guards (random.md:84)."]
#[doc = "`((cylinder secured and temperature = 68 °F) or pressure != 0 bar) and (temperature > 40 °C and temperature < 104 °F)`"]
fn never_random_83(seen: &Observed<'_>) -> Truth {
    ((seen.fact(Fact::CylinderSecured) & equal(seen.temperature, Some(Temperature::tabled(20.0) /* 20 °C */))) | not_equal(seen.pressure, Some(Pressure::tabled(0.0) /* 0 psi */)))
        & (greater(seen.temperature, Some(Temperature::tabled(40.0) /* 40 °C */)) & less(seen.temperature, Some(Temperature::tabled(40.0) /* 40 °C */)))
}

#[doc = "random-84: Random guards (random.md:85)."]
#[doc = "`temperature <= room.high or not pressure = fill.high or retains-gas`"]
fn never_random_84(seen: &Observed<'_>) -> Truth {
    at_most(seen.temperature, Some(Temperature::tabled(40.0) /* room.high: 40 °C */))
        | !equal(seen.pressure, Some(Pressure::tabled(13700000.0) /* fill.high: 137 bar */))
        | seen.has_condition(condition::RETAINS_GAS)
}

#[doc = "random-85: Random guards (random.md:86)."]
#[doc = "`not (flow = strong.low and device is blow-by)`"]
fn never_random_85(seen: &Observed<'_>) -> Truth {
    !(equal(seen.flow, Some(Flow::tabled(4.0) /* strong.low: 4 L/min */)) & seen.device_is(device::BLOW_BY))
}

#[doc = "random-86: Random guards (random.md:87)."]
#[doc = "`not pressure in over 13.7 MPa or not flow in 0.5 L/min to 1 L/min`"]
fn never_random_86(seen: &Observed<'_>) -> Truth {
    !within(seen.pressure, Range { low: Limit::Excluded(Pressure::tabled(13700000.0)), high: Limit::None } /* over 137 bar */)
        | !within(seen.flow, Range { low: Limit::Included(Flow::tabled(0.5)), high: Limit::Included(Flow::tabled(1.0)) } /* 0.5 to 1 L/min */)
}

#[doc = "random-87: Random guards (random.md:88)."]
#[doc = "`minutes left = wait and regulator pressurised`"]
fn never_random_87(seen: &Observed<'_>) -> Truth {
    equal(seen.minutes_left, Some(Time::tabled(90.0, TimeUnit::Second) /* wait: 90 s */))
        & seen.fact(Fact::RegulatorPressurised)
}

#[doc = "random-88: Random guards (random.md:89)."]
#[doc = "`grease near and (wheezes and temperature > -10 °C)`"]
fn never_random_88(seen: &Observed<'_>) -> Truth {
    seen.fact(Fact::GreaseNear)
        & (seen.has_condition(condition::WHEEZES) & greater(seen.temperature, Some(Temperature::tabled(-10.0) /* -10 °C */)))
}

#[doc = "random-89: Random guards (random.md:90)."]
#[doc = "`not device is blow-by`"]
fn never_random_89(seen: &Observed<'_>) -> Truth {
    !seen.device_is(device::BLOW_BY)
}

#[doc = "random-90: Random guards (random.md:91)."]
#[doc = "`not (cylinder laid down and (flow in 500 mL/min to 4000 mL/min and temperature in -4 °F to 0 °C))`"]
fn never_random_90(seen: &Observed<'_>) -> Truth {
    !(seen.fact(Fact::CylinderLaidDown) & (within(seen.flow, Range { low: Limit::Included(Flow::tabled(0.5)), high: Limit::Included(Flow::tabled(4.0)) } /* 0.5 to 4 L/min */) & within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(-20.0)), high: Limit::Included(Temperature::tabled(0.0)) } /* -20 to 0 °C */)))
}

#[doc = "random-91: Random guards (random.md:92)."]
#[doc = "`not pressure >= reserve and (not wheezes and device is cannula)`"]
fn never_random_91(seen: &Observed<'_>) -> Truth {
    !at_least(seen.pressure, Some(Pressure::tabled(3447378.64658418) /* reserve: 500 psi */))
        & (!seen.has_condition(condition::WHEEZES) & seen.device_is(device::CANNULA))
}

#[doc = "random-92: Random guards (random.md:93)."]
#[doc = "`temperature >= 50 °C and pressure > fill.low and (minutes wanted <= 1 h or spo2 in 85 % to 100 %) and (device is bag or (temperature != -20 °C and minutes wanted < ride.low))`"]
fn never_random_92(seen: &Observed<'_>) -> Truth {
    at_least(seen.temperature, Some(Temperature::tabled(50.0) /* 50 °C */))
        & greater(seen.pressure, Some(Pressure::tabled(5000000.0) /* fill.low: 50 bar */))
        & (at_most(seen.minutes_wanted, Some(Time::tabled(1.0, TimeUnit::Hour) /* 1 h */)) | within(seen.saturation(), Range { low: Limit::Included(Percent::tabled(85.0)), high: Limit::Included(Percent::tabled(100.0)) } /* 85 to 100 % */))
        & (seen.device_is(device::BAG) | (not_equal(seen.temperature, Some(Temperature::tabled(-20.0) /* -20 °C */)) & less(seen.minutes_wanted, Some(Time::tabled(10.0, TimeUnit::Minute) /* ride.low: 10 min */))))
}

#[doc = "random-93: Random guards (random.md:94)."]
#[doc = "`temperature <= -10 °C`"]
fn never_random_93(seen: &Observed<'_>) -> Truth {
    at_most(seen.temperature, Some(Temperature::tabled(-10.0) /* -10 °C */))
}

#[doc = "random-94: Random guards (random.md:95)."]
#[doc = "`not (device has reservoir or pressure in 5000 kPa to 10000 kPa)`"]
fn never_random_94(seen: &Observed<'_>) -> Truth {
    !(seen.device_has_reservoir(Guards.rules()) | within(seen.pressure, Range { low: Limit::Included(Pressure::tabled(5000000.0)), high: Limit::Included(Pressure::tabled(10000000.0)) } /* 50 to 100 bar */))
}

#[doc = "random-95: Random guards (random.md:96)."]
#[doc = "`not (minutes wanted = 90 s and group is adult) and (pressure > 10 MPa or (flow in 0 mL/min to 4000 mL/min and group is adult))`"]
fn never_random_95(seen: &Observed<'_>) -> Truth {
    !(equal(seen.minutes_wanted, Some(Time::tabled(90.0, TimeUnit::Second) /* 90 s */)) & seen.group_is(group::ADULT))
        & (greater(seen.pressure, Some(Pressure::tabled(10000000.0) /* 100 bar */)) | (within(seen.flow, Range { low: Limit::Included(Flow::tabled(0.0)), high: Limit::Included(Flow::tabled(4.0)) } /* 0 to 4 L/min */) & seen.group_is(group::ADULT)))
}

#[doc = "random-96: Random guards (random.md:97)."]
#[doc = "`not (temperature in room and flow < 15 L/min)`"]
fn never_random_96(seen: &Observed<'_>) -> Truth {
    !(within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(10.0)), high: Limit::Included(Temperature::tabled(40.0)) } /* 10 to 40 °C */) & less(seen.flow, Some(Flow::tabled(15.0) /* 15 L/min */)))
}

#[doc = "random-97: Random guards (random.md:98)."]
#[doc = "`device is bag and flow >= 2 L/min`"]
fn never_random_97(seen: &Observed<'_>) -> Truth {
    seen.device_is(device::BAG)
        & at_least(seen.flow, Some(Flow::tabled(2.0) /* 2 L/min */))
}

#[doc = "random-98: Random guards (random.md:99)."]
#[doc = "`flow > 2.5 L/min and flow in 4 L/min to 15 L/min and not washer fitted`"]
fn never_random_98(seen: &Observed<'_>) -> Truth {
    greater(seen.flow, Some(Flow::tabled(2.5) /* 2.5 L/min */))
        & within(seen.flow, Range { low: Limit::Included(Flow::tabled(4.0)), high: Limit::Included(Flow::tabled(15.0)) } /* 4 to 15 L/min */)
        & !seen.fact(Fact::WasherFitted)
}

#[doc = "random-99: Random guards (random.md:100)."]
#[doc = "`(minutes wanted <= ride.high or minutes wanted in at least 120 min) and grease near`"]
fn never_random_99(seen: &Observed<'_>) -> Truth {
    (at_most(seen.minutes_wanted, Some(Time::tabled(2.0, TimeUnit::Hour) /* ride.high: 2 h */)) | within(seen.minutes_wanted, Range { low: Limit::Included(Time::tabled(120.0, TimeUnit::Minute)), high: Limit::None } /* at least 120 min */))
        & seen.fact(Fact::GreaseNear)
}

#[doc = "random-100: Random guards (random.md:101)."]
#[doc = "`pressure in 500 psi to 10000 kPa or (regulator pressurised or device is blow-by)`"]
fn never_random_100(seen: &Observed<'_>) -> Truth {
    within(seen.pressure, Range { low: Limit::Included(Pressure::tabled(3447378.64658418)), high: Limit::Included(Pressure::tabled(10000000.0)) } /* 500 psi to 100 bar */)
        | (seen.fact(Fact::RegulatorPressurised) | seen.device_is(device::BLOW_BY))
}

#[doc = "random-101: Random guards (random.md:102)."]
#[doc = "`(retains-gas or group is child) and temperature in 68 °F to 104 °F`"]
fn never_random_101(seen: &Observed<'_>) -> Truth {
    (seen.has_condition(condition::RETAINS_GAS) | seen.group_is(group::CHILD))
        & within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(20.0)), high: Limit::Included(Temperature::tabled(40.0)) } /* 20 to 40 °C */)
}

#[doc = "random-102: Random guards (random.md:103)."]
#[doc = "`spo2 >= 85 % and not (cylinder secured or minutes wanted = 0 h)`"]
fn never_random_102(seen: &Observed<'_>) -> Truth {
    at_least(seen.saturation(), Some(Percent::tabled(85.0) /* 85 % */))
        & !(seen.fact(Fact::CylinderSecured) | equal(seen.minutes_wanted, Some(Time::tabled(0.0, TimeUnit::Hour) /* 0 h */)))
}

#[doc = "random-103: Random guards (random.md:104)."]
#[doc = "`not flame near`"]
fn never_random_103(seen: &Observed<'_>) -> Truth {
    !seen.fact(Fact::FlameNear)
}

#[doc = "random-104: Random guards (random.md:105)."]
#[doc = "`((pressure >= fill.low and flow in 2.5 L/min to 4 L/min) or temperature in room) and not (minutes left > 120 min or spo2 >= target.low)`"]
fn never_random_104(seen: &Observed<'_>) -> Truth {
    ((at_least(seen.pressure, Some(Pressure::tabled(5000000.0) /* fill.low: 50 bar */)) & within(seen.flow, Range { low: Limit::Included(Flow::tabled(2.5)), high: Limit::Included(Flow::tabled(4.0)) } /* 2.5 to 4 L/min */)) | within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(10.0)), high: Limit::Included(Temperature::tabled(40.0)) } /* 10 to 40 °C */))
        & !(greater(seen.minutes_left, Some(Time::tabled(120.0, TimeUnit::Minute) /* 120 min */)) | at_least(seen.saturation(), seen.target_low()))
}

#[doc = "random-105: Random guards (random.md:106)."]
#[doc = "`not (temperature in 0 °C to 20 °C or spo2 = safe.low or not flow != 8 L/min)`"]
fn never_random_105(seen: &Observed<'_>) -> Truth {
    !(within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(0.0)), high: Limit::Included(Temperature::tabled(20.0)) } /* 0 to 20 °C */) | equal(seen.saturation(), Some(Percent::tabled(88.0) /* safe.low: 88 % */)) | !not_equal(seen.flow, Some(Flow::tabled(8.0) /* 8 L/min */)))
}

#[doc = "random-106: Random guards (random.md:107)."]
#[doc = "`(device is cannula or not spo2 < 92 %) and (flow > 8 L/min and pressure != 5 MPa)`"]
fn never_random_106(seen: &Observed<'_>) -> Truth {
    (seen.device_is(device::CANNULA) | !less(seen.saturation(), Some(Percent::tabled(92.0) /* 92 % */)))
        & (greater(seen.flow, Some(Flow::tabled(8.0) /* 8 L/min */)) & not_equal(seen.pressure, Some(Pressure::tabled(5000000.0) /* 50 bar */)))
}

#[doc = "random-107: Random guards (random.md:108)."]
#[doc = "`minutes left != 0 s and temperature != room.high and (temperature = -20 °C and minutes wanted > minutes left)`"]
fn never_random_107(seen: &Observed<'_>) -> Truth {
    not_equal(seen.minutes_left, Some(Time::tabled(0.0, TimeUnit::Second) /* 0 s */))
        & not_equal(seen.temperature, Some(Temperature::tabled(40.0) /* room.high: 40 °C */))
        & (equal(seen.temperature, Some(Temperature::tabled(-20.0) /* -20 °C */)) & greater(seen.minutes_wanted, seen.minutes_left))
}

#[doc = "random-108: Random guards (random.md:109)."]
#[doc = "`not (pressure in under 50 bar or minutes left in 15 min to 2 h) and (not minutes wanted in 15 min to 1.5 h and flow <= 2500 mL/min)`"]
fn never_random_108(seen: &Observed<'_>) -> Truth {
    !(within(seen.pressure, Range { low: Limit::None, high: Limit::Excluded(Pressure::tabled(5000000.0)) } /* under 50 bar */) | within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(15.0, TimeUnit::Minute)), high: Limit::Included(Time::tabled(2.0, TimeUnit::Hour)) } /* 15 min to 2 h */))
        & (!within(seen.minutes_wanted, Range { low: Limit::Included(Time::tabled(15.0, TimeUnit::Minute)), high: Limit::Included(Time::tabled(1.5, TimeUnit::Hour)) } /* 15 min to 1.5 h */) & at_most(seen.flow, Some(Flow::tabled(2.5) /* 2.5 L/min */)))
}

#[doc = "random-109: Random guards (random.md:110)."]
#[doc = "`group is adult or spo2 > target.high or (flame near or device is blow-by)`"]
fn never_random_109(seen: &Observed<'_>) -> Truth {
    seen.group_is(group::ADULT)
        | greater(seen.saturation(), seen.target_high())
        | (seen.fact(Fact::FlameNear) | seen.device_is(device::BLOW_BY))
}

#[doc = "random-110: Random guards (random.md:111)."]
#[doc = "`(cylinder secured and not flow >= device.least-flow) or (minutes left >= ride.low and temperature < frost.high)`"]
fn never_random_110(seen: &Observed<'_>) -> Truth {
    (seen.fact(Fact::CylinderSecured) & !seen.device_flow(Guards.rules(), |limits| at_least(seen.flow, limits.low.value())))
        | (at_least(seen.minutes_left, Some(Time::tabled(10.0, TimeUnit::Minute) /* ride.low: 10 min */)) & less(seen.temperature, Some(Temperature::tabled(-10.0) /* frost.high: -10 °C */)))
}

#[doc = "random-111: Random guards (random.md:112)."]
#[doc = "`pressure <= 10 MPa and spo2 > safe.low and (group is child or spo2 != 94 % or temperature = frost.high)`"]
fn never_random_111(seen: &Observed<'_>) -> Truth {
    at_most(seen.pressure, Some(Pressure::tabled(10000000.0) /* 100 bar */))
        & greater(seen.saturation(), Some(Percent::tabled(88.0) /* safe.low: 88 % */))
        & (seen.group_is(group::CHILD) | not_equal(seen.saturation(), Some(Percent::tabled(94.0) /* 94 % */)) | equal(seen.temperature, Some(Temperature::tabled(-10.0) /* frost.high: -10 °C */)))
}

#[doc = "random-112: Random guards (random.md:113)."]
#[doc = "`not reservoir filled and device is mask`"]
fn never_random_112(seen: &Observed<'_>) -> Truth {
    !seen.fact(Fact::ReservoirFilled)
        & seen.device_is(device::MASK)
}

#[doc = "random-113: Random guards (random.md:114)."]
#[doc = "`not (flow <= 15 L/min or temperature != frost.high)`"]
fn never_random_113(seen: &Observed<'_>) -> Truth {
    !(at_most(seen.flow, Some(Flow::tabled(15.0) /* 15 L/min */)) | not_equal(seen.temperature, Some(Temperature::tabled(-10.0) /* frost.high: -10 °C */)))
}

#[doc = "random-114: Random guards (random.md:115)."]
#[doc = "`not reservoir filled or pressure > fill.high`"]
fn never_random_114(seen: &Observed<'_>) -> Truth {
    !seen.fact(Fact::ReservoirFilled)
        | greater(seen.pressure, Some(Pressure::tabled(13700000.0) /* fill.high: 137 bar */))
}

#[doc = "random-115: Random guards (random.md:116)."]
#[doc = "`wheezes and retains-gas and (pressure != 5 MPa and temperature != 0 °C)`"]
fn never_random_115(seen: &Observed<'_>) -> Truth {
    seen.has_condition(condition::WHEEZES)
        & seen.has_condition(condition::RETAINS_GAS)
        & (not_equal(seen.pressure, Some(Pressure::tabled(5000000.0) /* 50 bar */)) & not_equal(seen.temperature, Some(Temperature::tabled(0.0) /* 0 °C */)))
}

#[doc = "random-116: Random guards (random.md:117)."]
#[doc = "`not (flow in strong or group is adult)`"]
fn never_random_116(seen: &Observed<'_>) -> Truth {
    !(within(seen.flow, Range { low: Limit::Included(Flow::tabled(4.0)), high: Limit::None } /* at least 4 L/min */) | seen.group_is(group::ADULT))
}

#[doc = "random-117: Random guards (random.md:118)."]
#[doc = "`(pressure = fill.low or cylinder open) and not (temperature >= frost.high or flow <= device.least-flow)`"]
fn never_random_117(seen: &Observed<'_>) -> Truth {
    (equal(seen.pressure, Some(Pressure::tabled(5000000.0) /* fill.low: 50 bar */)) | seen.fact(Fact::CylinderOpen))
        & !(at_least(seen.temperature, Some(Temperature::tabled(-10.0) /* frost.high: -10 °C */)) | seen.device_flow(Guards.rules(), |limits| at_most(seen.flow, limits.low.value())))
}

#[doc = "random-118: Random guards (random.md:119)."]
#[doc = "`reservoir filled or not pressure in 100 bar to 137 bar or not (temperature in at most 20 °C and pressure = 5000 kPa)`"]
fn never_random_118(seen: &Observed<'_>) -> Truth {
    seen.fact(Fact::ReservoirFilled)
        | !within(seen.pressure, Range { low: Limit::Included(Pressure::tabled(10000000.0)), high: Limit::Included(Pressure::tabled(13700000.0)) } /* 100 to 137 bar */)
        | !(within(seen.temperature, Range { low: Limit::None, high: Limit::Included(Temperature::tabled(20.0)) } /* at most 20 °C */) & equal(seen.pressure, Some(Pressure::tabled(5000000.0) /* 50 bar */)))
}

#[doc = "random-119: Random guards (random.md:120)."]
#[doc = "`not (minutes left >= wait or device is cannula)`"]
fn never_random_119(seen: &Observed<'_>) -> Truth {
    !(at_least(seen.minutes_left, Some(Time::tabled(90.0, TimeUnit::Second) /* wait: 90 s */)) | seen.device_is(device::CANNULA))
}

#[doc = "random-120: Random guards (random.md:121)."]
#[doc = "`not flow <= 10 L/min`"]
fn never_random_120(seen: &Observed<'_>) -> Truth {
    !at_most(seen.flow, Some(Flow::tabled(10.0) /* 10 L/min */))
}

#[doc = "random-121: Random guards (random.md:122)."]
#[doc = "`not minutes left != minutes wanted or not temperature < 50 °C`"]
fn never_random_121(seen: &Observed<'_>) -> Truth {
    !not_equal(seen.minutes_left, seen.minutes_wanted)
        | !less(seen.temperature, Some(Temperature::tabled(50.0) /* 50 °C */))
}

#[doc = "random-122: Random guards (random.md:123)."]
#[doc = "`not not (pressure != fill.high and spo2 >= 98 %)`"]
fn never_random_122(seen: &Observed<'_>) -> Truth {
    !!(not_equal(seen.pressure, Some(Pressure::tabled(13700000.0) /* fill.high: 137 bar */)) & at_least(seen.saturation(), Some(Percent::tabled(98.0) /* 98 % */)))
}

#[doc = "random-123: Random guards (random.md:124)."]
#[doc = "`minutes left in 0 h to 120 min or cylinder laid down or not reservoir filled`"]
fn never_random_123(seen: &Observed<'_>) -> Truth {
    within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(0.0, TimeUnit::Hour)), high: Limit::Included(Time::tabled(120.0, TimeUnit::Minute)) } /* 0 h to 120 min */)
        | seen.fact(Fact::CylinderLaidDown)
        | !seen.fact(Fact::ReservoirFilled)
}

#[doc = "random-124: Random guards (random.md:125)."]
#[doc = "`temperature != frost.high or cylinder standing free`"]
fn never_random_124(seen: &Observed<'_>) -> Truth {
    not_equal(seen.temperature, Some(Temperature::tabled(-10.0) /* frost.high: -10 °C */))
        | seen.fact(Fact::CylinderStandingFree)
}

#[doc = "random-125: Random guards (random.md:126)."]
#[doc = "`device is bag and group is adult and ((outlet clear and pressure <= 13700 kPa) or spo2 <= target.low)`"]
fn never_random_125(seen: &Observed<'_>) -> Truth {
    seen.device_is(device::BAG)
        & seen.group_is(group::ADULT)
        & ((seen.fact(Fact::OutletClear) & at_most(seen.pressure, Some(Pressure::tabled(13700000.0) /* 137 bar */))) | at_most(seen.saturation(), seen.target_low()))
}

#[doc = "random-126: Random guards (random.md:127)."]
#[doc = "`minutes wanted <= wait or cylinder standing free or ((pressure > reserve or outlet clear) and minutes left != minutes wanted)`"]
fn never_random_126(seen: &Observed<'_>) -> Truth {
    at_most(seen.minutes_wanted, Some(Time::tabled(90.0, TimeUnit::Second) /* wait: 90 s */))
        | seen.fact(Fact::CylinderStandingFree)
        | ((greater(seen.pressure, Some(Pressure::tabled(3447378.64658418) /* reserve: 500 psi */)) | seen.fact(Fact::OutletClear)) & not_equal(seen.minutes_left, seen.minutes_wanted))
}

#[doc = "random-127: Random guards (random.md:128)."]
#[doc = "`not not not spo2 >= 94 %`"]
fn never_random_127(seen: &Observed<'_>) -> Truth {
    !!!at_least(seen.saturation(), Some(Percent::tabled(94.0) /* 94 % */))
}

#[doc = "random-128: Random guards (random.md:129)."]
#[doc = "`not device is bag or not minutes left < 90 s`"]
fn never_random_128(seen: &Observed<'_>) -> Truth {
    !seen.device_is(device::BAG)
        | !less(seen.minutes_left, Some(Time::tabled(90.0, TimeUnit::Second) /* 90 s */))
}

#[doc = "random-129: Random guards (random.md:130)."]
#[doc = "`not device is blow-by and not (group is child or pressure != 10000 kPa)`"]
fn never_random_129(seen: &Observed<'_>) -> Truth {
    !seen.device_is(device::BLOW_BY)
        & !(seen.group_is(group::CHILD) | not_equal(seen.pressure, Some(Pressure::tabled(10000000.0) /* 100 bar */)))
}

#[doc = "random-130: Random guards (random.md:131)."]
#[doc = "`washer fitted and minutes left = 0 h and not cylinder secured`"]
fn never_random_130(seen: &Observed<'_>) -> Truth {
    seen.fact(Fact::WasherFitted)
        & equal(seen.minutes_left, Some(Time::tabled(0.0, TimeUnit::Hour) /* 0 h */))
        & !seen.fact(Fact::CylinderSecured)
}

#[doc = "random-131: Random guards (random.md:132)."]
#[doc = "`(temperature = frost.high and not temperature <= frost.high and device is blow-by) or (outlet clear or wheezes)`"]
fn never_random_131(seen: &Observed<'_>) -> Truth {
    (equal(seen.temperature, Some(Temperature::tabled(-10.0) /* frost.high: -10 °C */)) & !at_most(seen.temperature, Some(Temperature::tabled(-10.0) /* frost.high: -10 °C */)) & seen.device_is(device::BLOW_BY))
        | (seen.fact(Fact::OutletClear) | seen.has_condition(condition::WHEEZES))
}

#[doc = "random-132: Random guards (random.md:133)."]
#[doc = "`not not (cylinder secured and wheezes)`"]
fn never_random_132(seen: &Observed<'_>) -> Truth {
    !!(seen.fact(Fact::CylinderSecured) & seen.has_condition(condition::WHEEZES))
}

#[doc = "random-133: Random guards (random.md:134)."]
#[doc = "`not temperature <= 68 °F or not pressure > 10 MPa`"]
fn never_random_133(seen: &Observed<'_>) -> Truth {
    !at_most(seen.temperature, Some(Temperature::tabled(20.0) /* 20 °C */))
        | !greater(seen.pressure, Some(Pressure::tabled(10000000.0) /* 100 bar */))
}

#[doc = "random-134: Random guards (random.md:135)."]
#[doc = "`not (retains-gas and minutes wanted in under 60 min and device is blow-by)`"]
fn never_random_134(seen: &Observed<'_>) -> Truth {
    !(seen.has_condition(condition::RETAINS_GAS) & within(seen.minutes_wanted, Range { low: Limit::None, high: Limit::Excluded(Time::tabled(60.0, TimeUnit::Minute)) } /* under 60 min */) & seen.device_is(device::BLOW_BY))
}

#[doc = "random-135: Random guards (random.md:136)."]
#[doc = "`not temperature >= frost.high`"]
fn never_random_135(seen: &Observed<'_>) -> Truth {
    !at_least(seen.temperature, Some(Temperature::tabled(-10.0) /* frost.high: -10 °C */))
}

#[doc = "random-136: Random guards (random.md:137)."]
#[doc = "`(pressure >= 13.7 MPa and minutes left = minutes wanted) or device is cannula or not not device is bag`"]
fn never_random_136(seen: &Observed<'_>) -> Truth {
    (at_least(seen.pressure, Some(Pressure::tabled(13700000.0) /* 137 bar */)) & equal(seen.minutes_left, seen.minutes_wanted))
        | seen.device_is(device::CANNULA)
        | !!seen.device_is(device::BAG)
}

#[doc = "random-137: Random guards (random.md:138)."]
#[doc = "`minutes left > 1 h and (wheezes or minutes left in ride)`"]
fn never_random_137(seen: &Observed<'_>) -> Truth {
    greater(seen.minutes_left, Some(Time::tabled(1.0, TimeUnit::Hour) /* 1 h */))
        & (seen.has_condition(condition::WHEEZES) | within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(10.0, TimeUnit::Minute)), high: Limit::Included(Time::tabled(2.0, TimeUnit::Hour)) } /* 10 min to 2 h */))
}

#[doc = "random-138: Random guards (random.md:139)."]
#[doc = "`device is mask and flow != 12 L/min and minutes left <= minutes wanted`"]
fn never_random_138(seen: &Observed<'_>) -> Truth {
    seen.device_is(device::MASK)
        & not_equal(seen.flow, Some(Flow::tabled(12.0) /* 12 L/min */))
        & at_most(seen.minutes_left, seen.minutes_wanted)
}

#[doc = "random-139: Random guards (random.md:140)."]
#[doc = "`not device is blow-by and flow in 2.5 L/min to 10 L/min`"]
fn never_random_139(seen: &Observed<'_>) -> Truth {
    !seen.device_is(device::BLOW_BY)
        & within(seen.flow, Range { low: Limit::Included(Flow::tabled(2.5)), high: Limit::Included(Flow::tabled(10.0)) } /* 2.5 to 10 L/min */)
}

#[doc = "random-140: Random guards (random.md:141)."]
#[doc = "`not spo2 >= target.low`"]
fn never_random_140(seen: &Observed<'_>) -> Truth {
    !at_least(seen.saturation(), seen.target_low())
}

#[doc = "random-141: Random guards (random.md:142)."]
#[doc = "`not temperature in 104 °F to 50 °C or (minutes wanted < wait and spo2 in safe)`"]
fn never_random_141(seen: &Observed<'_>) -> Truth {
    !within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(40.0)), high: Limit::Included(Temperature::tabled(50.0)) } /* 40 to 50 °C */)
        | (less(seen.minutes_wanted, Some(Time::tabled(90.0, TimeUnit::Second) /* wait: 90 s */)) & within(seen.saturation(), Range { low: Limit::Excluded(Percent::tabled(88.0)), high: Limit::None } /* over 88 % */))
}

#[doc = "random-142: Random guards (random.md:143)."]
#[doc = "`(regulator pressurised or spo2 in under 88.1 %) and not wheezes and (temperature in frost or spo2 in 88 % to 94 %)`"]
fn never_random_142(seen: &Observed<'_>) -> Truth {
    (seen.fact(Fact::RegulatorPressurised) | within(seen.saturation(), Range { low: Limit::None, high: Limit::Excluded(Percent::tabled(88.1)) } /* under 88.1 % */))
        & !seen.has_condition(condition::WHEEZES)
        & (within(seen.temperature, Range { low: Limit::None, high: Limit::Excluded(Temperature::tabled(-10.0)) } /* under -10 °C */) | within(seen.saturation(), Range { low: Limit::Included(Percent::tabled(88.0)), high: Limit::Included(Percent::tabled(94.0)) } /* 88 to 94 % */))
}

#[doc = "random-143: Random guards (random.md:144)."]
#[doc = "`temperature in -20 °C to 14 °F and (temperature != 68 °F or regulator seated)`"]
fn never_random_143(seen: &Observed<'_>) -> Truth {
    within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(-20.0)), high: Limit::Included(Temperature::tabled(-10.0)) } /* -20 to -10 °C */)
        & (not_equal(seen.temperature, Some(Temperature::tabled(20.0) /* 20 °C */)) | seen.fact(Fact::RegulatorSeated))
}

#[doc = "random-144: Random guards (random.md:145)."]
#[doc = "`not washer fitted or not (not minutes wanted > 1.5 h or device is bag)`"]
fn never_random_144(seen: &Observed<'_>) -> Truth {
    !seen.fact(Fact::WasherFitted)
        | !(!greater(seen.minutes_wanted, Some(Time::tabled(1.5, TimeUnit::Hour) /* 1.5 h */)) | seen.device_is(device::BAG))
}

#[doc = "random-145: Random guards (random.md:146)."]
#[doc = "`temperature <= room.low and not washer fitted`"]
fn never_random_145(seen: &Observed<'_>) -> Truth {
    at_most(seen.temperature, Some(Temperature::tabled(10.0) /* room.low: 10 °C */))
        & !seen.fact(Fact::WasherFitted)
}

#[doc = "random-146: Random guards (random.md:147)."]
#[doc = "`not ((group is adult and minutes left > 60 min) or pressure < reserve)`"]
fn never_random_146(seen: &Observed<'_>) -> Truth {
    !((seen.group_is(group::ADULT) & greater(seen.minutes_left, Some(Time::tabled(60.0, TimeUnit::Minute) /* 60 min */))) | less(seen.pressure, Some(Pressure::tabled(3447378.64658418) /* reserve: 500 psi */)))
}

#[doc = "random-147: Random guards (random.md:148)."]
#[doc = "`temperature in 68 °F to 104 °F or temperature = room.high or (washer fitted and flow > strong.low)`"]
fn never_random_147(seen: &Observed<'_>) -> Truth {
    within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(20.0)), high: Limit::Included(Temperature::tabled(40.0)) } /* 20 to 40 °C */)
        | equal(seen.temperature, Some(Temperature::tabled(40.0) /* room.high: 40 °C */))
        | (seen.fact(Fact::WasherFitted) & greater(seen.flow, Some(Flow::tabled(4.0) /* strong.low: 4 L/min */)))
}

#[doc = "random-148: Random guards (random.md:149)."]
#[doc = "`device is bag and (minutes left < ride.high and pressure != 500 psi)`"]
fn never_random_148(seen: &Observed<'_>) -> Truth {
    seen.device_is(device::BAG)
        & (less(seen.minutes_left, Some(Time::tabled(2.0, TimeUnit::Hour) /* ride.high: 2 h */)) & not_equal(seen.pressure, Some(Pressure::tabled(3447378.64658418) /* 500 psi */)))
}

#[doc = "random-149: Random guards (random.md:150)."]
#[doc = "`not not pressure != reserve or minutes left in ride`"]
fn never_random_149(seen: &Observed<'_>) -> Truth {
    !!not_equal(seen.pressure, Some(Pressure::tabled(3447378.64658418) /* reserve: 500 psi */))
        | within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(10.0, TimeUnit::Minute)), high: Limit::Included(Time::tabled(2.0, TimeUnit::Hour)) } /* 10 min to 2 h */)
}

#[doc = "random-150: Random guards (random.md:151)."]
#[doc = "`(cylinder open and (temperature != 14 °F and device is mask)) or not group is newborn`"]
fn never_random_150(seen: &Observed<'_>) -> Truth {
    (seen.fact(Fact::CylinderOpen) & (not_equal(seen.temperature, Some(Temperature::tabled(-10.0) /* -10 °C */)) & seen.device_is(device::MASK)))
        | !seen.group_is(group::NEWBORN)
}

#[doc = "random-151: Random guards (random.md:152)."]
#[doc = "`not cylinder laid down and (not reservoir filled and wheezes)`"]
fn never_random_151(seen: &Observed<'_>) -> Truth {
    !seen.fact(Fact::CylinderLaidDown)
        & (!seen.fact(Fact::ReservoirFilled) & seen.has_condition(condition::WHEEZES))
}

#[doc = "random-152: Random guards (random.md:153)."]
#[doc = "`not (minutes left != ride.high and minutes left != 600 s)`"]
fn never_random_152(seen: &Observed<'_>) -> Truth {
    !(not_equal(seen.minutes_left, Some(Time::tabled(2.0, TimeUnit::Hour) /* ride.high: 2 h */)) & not_equal(seen.minutes_left, Some(Time::tabled(600.0, TimeUnit::Second) /* 600 s */)))
}

#[doc = "random-153: Random guards (random.md:154)."]
#[doc = "`not group is child and device has reservoir`"]
fn never_random_153(seen: &Observed<'_>) -> Truth {
    !seen.group_is(group::CHILD)
        & seen.device_has_reservoir(Guards.rules())
}

#[doc = "random-154: Random guards (random.md:155)."]
#[doc = "`not minutes wanted != minutes left or not minutes wanted = 120 min`"]
fn never_random_154(seen: &Observed<'_>) -> Truth {
    !not_equal(seen.minutes_wanted, seen.minutes_left)
        | !equal(seen.minutes_wanted, Some(Time::tabled(120.0, TimeUnit::Minute) /* 120 min */))
}

#[doc = "random-155: Random guards (random.md:156)."]
#[doc = "`minutes wanted in 1.5 h to 120 min and flame near and device is blow-by and flame near`"]
fn never_random_155(seen: &Observed<'_>) -> Truth {
    within(seen.minutes_wanted, Range { low: Limit::Included(Time::tabled(1.5, TimeUnit::Hour)), high: Limit::Included(Time::tabled(120.0, TimeUnit::Minute)) } /* 1.5 h to 120 min */)
        & seen.fact(Fact::FlameNear)
        & seen.device_is(device::BLOW_BY)
        & seen.fact(Fact::FlameNear)
}

#[doc = "random-156: Random guards (random.md:157)."]
#[doc = "`not not device is mask and not pressure in 500 psi to 137 bar`"]
fn never_random_156(seen: &Observed<'_>) -> Truth {
    !!seen.device_is(device::MASK)
        & !within(seen.pressure, Range { low: Limit::Included(Pressure::tabled(3447378.64658418)), high: Limit::Included(Pressure::tabled(13700000.0)) } /* 500 psi to 137 bar */)
}

#[doc = "random-157: Random guards (random.md:158)."]
#[doc = "`not cylinder laid down or reservoir filled`"]
fn never_random_157(seen: &Observed<'_>) -> Truth {
    !seen.fact(Fact::CylinderLaidDown)
        | seen.fact(Fact::ReservoirFilled)
}

#[doc = "random-158: Random guards (random.md:159)."]
#[doc = "`not not flow in over 10 L/min`"]
fn never_random_158(seen: &Observed<'_>) -> Truth {
    !!within(seen.flow, Range { low: Limit::Excluded(Flow::tabled(10.0)), high: Limit::None } /* over 10 L/min */)
}

#[doc = "random-159: Random guards (random.md:160)."]
#[doc = "`not (retains-gas and (flow > 0.5 L/min and group is newborn))`"]
fn never_random_159(seen: &Observed<'_>) -> Truth {
    !(seen.has_condition(condition::RETAINS_GAS) & (greater(seen.flow, Some(Flow::tabled(0.5) /* 0.5 L/min */)) & seen.group_is(group::NEWBORN)))
}

#[doc = "random-160: Random guards (random.md:161)."]
#[doc = "`temperature < room.high and not temperature <= room.high and (device is blow-by or spo2 != target.high)`"]
fn never_random_160(seen: &Observed<'_>) -> Truth {
    less(seen.temperature, Some(Temperature::tabled(40.0) /* room.high: 40 °C */))
        & !at_most(seen.temperature, Some(Temperature::tabled(40.0) /* room.high: 40 °C */))
        & (seen.device_is(device::BLOW_BY) | not_equal(seen.saturation(), seen.target_high()))
}

#[doc = "random-161: Random guards (random.md:162)."]
#[doc = "`not (not cylinder open and (group is adult and device has reservoir))`"]
fn never_random_161(seen: &Observed<'_>) -> Truth {
    !(!seen.fact(Fact::CylinderOpen) & (seen.group_is(group::ADULT) & seen.device_has_reservoir(Guards.rules())))
}

#[doc = "random-162: Random guards (random.md:163)."]
#[doc = "`not not spo2 in 94 % to 100 %`"]
fn never_random_162(seen: &Observed<'_>) -> Truth {
    !!within(seen.saturation(), Range { low: Limit::Included(Percent::tabled(94.0)), high: Limit::Included(Percent::tabled(100.0)) } /* 94 to 100 % */)
}

#[doc = "random-163: Random guards (random.md:164)."]
#[doc = "`not minutes left > ride.low and spo2 = 92 %`"]
fn never_random_163(seen: &Observed<'_>) -> Truth {
    !greater(seen.minutes_left, Some(Time::tabled(10.0, TimeUnit::Minute) /* ride.low: 10 min */))
        & equal(seen.saturation(), Some(Percent::tabled(92.0) /* 92 % */))
}

#[doc = "random-164: Random guards (random.md:165)."]
#[doc = "`not (device is cannula and outlet clear)`"]
fn never_random_164(seen: &Observed<'_>) -> Truth {
    !(seen.device_is(device::CANNULA) & seen.fact(Fact::OutletClear))
}

#[doc = "random-165: Random guards (random.md:166)."]
#[doc = "`(not flow <= 15 L/min or outlet clear) and (pressure > fill.high or minutes left in over 1.5 min)`"]
fn never_random_165(seen: &Observed<'_>) -> Truth {
    (!at_most(seen.flow, Some(Flow::tabled(15.0) /* 15 L/min */)) | seen.fact(Fact::OutletClear))
        & (greater(seen.pressure, Some(Pressure::tabled(13700000.0) /* fill.high: 137 bar */)) | within(seen.minutes_left, Range { low: Limit::Excluded(Time::tabled(1.5, TimeUnit::Minute)), high: Limit::None } /* over 1.5 min */))
}

#[doc = "random-166: Random guards (random.md:167)."]
#[doc = "`retains-gas and minutes left = ride.high and (grease near and (regulator seated or device is mask))`"]
fn never_random_166(seen: &Observed<'_>) -> Truth {
    seen.has_condition(condition::RETAINS_GAS)
        & equal(seen.minutes_left, Some(Time::tabled(2.0, TimeUnit::Hour) /* ride.high: 2 h */))
        & (seen.fact(Fact::GreaseNear) & (seen.fact(Fact::RegulatorSeated) | seen.device_is(device::MASK)))
}

#[doc = "random-167: Random guards (random.md:168)."]
#[doc = "`(minutes left < ride.low and outlet clear) or (not pressure in 0 bar to 13700 kPa or pressure <= 137 bar)`"]
fn never_random_167(seen: &Observed<'_>) -> Truth {
    (less(seen.minutes_left, Some(Time::tabled(10.0, TimeUnit::Minute) /* ride.low: 10 min */)) & seen.fact(Fact::OutletClear))
        | (!within(seen.pressure, Range { low: Limit::Included(Pressure::tabled(0.0)), high: Limit::Included(Pressure::tabled(13700000.0)) } /* 0 psi to 137 bar */) | at_most(seen.pressure, Some(Pressure::tabled(13700000.0) /* 137 bar */)))
}

#[doc = "random-168: Random guards (random.md:169)."]
#[doc = "`device is bag or (temperature in room and flame near)`"]
fn never_random_168(seen: &Observed<'_>) -> Truth {
    seen.device_is(device::BAG)
        | (within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(10.0)), high: Limit::Included(Temperature::tabled(40.0)) } /* 10 to 40 °C */) & seen.fact(Fact::FlameNear))
}

#[doc = "random-169: Random guards (random.md:170)."]
#[doc = "`not device is cannula or wheezes`"]
fn never_random_169(seen: &Observed<'_>) -> Truth {
    !seen.device_is(device::CANNULA)
        | seen.has_condition(condition::WHEEZES)
}

#[doc = "random-170: Random guards (random.md:171)."]
#[doc = "`not retains-gas`"]
fn never_random_170(seen: &Observed<'_>) -> Truth {
    !seen.has_condition(condition::RETAINS_GAS)
}

#[doc = "random-171: Random guards (random.md:172)."]
#[doc = "`minutes left >= ride.low or (minutes left in at least 0 h or spo2 > target.low)`"]
fn never_random_171(seen: &Observed<'_>) -> Truth {
    at_least(seen.minutes_left, Some(Time::tabled(10.0, TimeUnit::Minute) /* ride.low: 10 min */))
        | (within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(0.0, TimeUnit::Hour)), high: Limit::None } /* at least 0 h */) | greater(seen.saturation(), seen.target_low()))
}

#[doc = "random-172: Random guards (random.md:173)."]
#[doc = "`device on patient and not retains-gas and (device has reservoir or spo2 < target.high)`"]
fn never_random_172(seen: &Observed<'_>) -> Truth {
    seen.fact(Fact::DeviceOnPatient)
        & !seen.has_condition(condition::RETAINS_GAS)
        & (seen.device_has_reservoir(Guards.rules()) | less(seen.saturation(), seen.target_high()))
}

#[doc = "random-173: Random guards (random.md:174)."]
#[doc = "`not (cylinder laid down or device is blow-by)`"]
fn never_random_173(seen: &Observed<'_>) -> Truth {
    !(seen.fact(Fact::CylinderLaidDown) | seen.device_is(device::BLOW_BY))
}

#[doc = "random-174: Random guards (random.md:175)."]
#[doc = "`not (group is adult and spo2 != urgent)`"]
fn never_random_174(seen: &Observed<'_>) -> Truth {
    !(seen.group_is(group::ADULT) & not_equal(seen.saturation(), Some(Percent::tabled(85.0) /* urgent: 85 % */)))
}

#[doc = "random-175: Random guards (random.md:176)."]
#[doc = "`device is bag and minutes wanted in 10 min to 1.5 h`"]
fn never_random_175(seen: &Observed<'_>) -> Truth {
    seen.device_is(device::BAG)
        & within(seen.minutes_wanted, Range { low: Limit::Included(Time::tabled(10.0, TimeUnit::Minute)), high: Limit::Included(Time::tabled(1.5, TimeUnit::Hour)) } /* 10 min to 1.5 h */)
}

#[doc = "random-176: Random guards (random.md:177)."]
#[doc = "`not cylinder open or not temperature > 50 °C`"]
fn never_random_176(seen: &Observed<'_>) -> Truth {
    !seen.fact(Fact::CylinderOpen)
        | !greater(seen.temperature, Some(Temperature::tabled(50.0) /* 50 °C */))
}

#[doc = "random-177: Random guards (random.md:178)."]
#[doc = "`not temperature < room.low or flow in strong`"]
fn never_random_177(seen: &Observed<'_>) -> Truth {
    !less(seen.temperature, Some(Temperature::tabled(10.0) /* room.low: 10 °C */))
        | within(seen.flow, Range { low: Limit::Included(Flow::tabled(4.0)), high: Limit::None } /* at least 4 L/min */)
}

#[doc = "random-178: Random guards (random.md:179)."]
#[doc = "`retains-gas or spo2 <= 98 %`"]
fn never_random_178(seen: &Observed<'_>) -> Truth {
    seen.has_condition(condition::RETAINS_GAS)
        | at_most(seen.saturation(), Some(Percent::tabled(98.0) /* 98 % */))
}

#[doc = "random-179: Random guards (random.md:180)."]
#[doc = "`not device has reservoir or (pressure < 1000 psi or outlet clear)`"]
fn never_random_179(seen: &Observed<'_>) -> Truth {
    !seen.device_has_reservoir(Guards.rules())
        | (less(seen.pressure, Some(Pressure::tabled(6894757.29316836) /* 1000 psi */)) | seen.fact(Fact::OutletClear))
}

#[doc = "random-180: Random guards (random.md:181)."]
#[doc = "`(flow < strong.low and minutes left < 0 s) or (spo2 > 98 % and washer fitted)`"]
fn never_random_180(seen: &Observed<'_>) -> Truth {
    (less(seen.flow, Some(Flow::tabled(4.0) /* strong.low: 4 L/min */)) & less(seen.minutes_left, Some(Time::tabled(0.0, TimeUnit::Second) /* 0 s */)))
        | (greater(seen.saturation(), Some(Percent::tabled(98.0) /* 98 % */)) & seen.fact(Fact::WasherFitted))
}

#[doc = "random-181: Random guards (random.md:182)."]
#[doc = "`not (regulator pressurised or washer fitted)`"]
fn never_random_181(seen: &Observed<'_>) -> Truth {
    !(seen.fact(Fact::RegulatorPressurised) | seen.fact(Fact::WasherFitted))
}

#[doc = "random-182: Random guards (random.md:183)."]
#[doc = "`not (pressure >= fill.low and pressure in 13700 kPa to 13.7 MPa)`"]
fn never_random_182(seen: &Observed<'_>) -> Truth {
    !(at_least(seen.pressure, Some(Pressure::tabled(5000000.0) /* fill.low: 50 bar */)) & within(seen.pressure, Range { low: Limit::Included(Pressure::tabled(13700000.0)), high: Limit::Included(Pressure::tabled(13700000.0)) } /* 137 to 137 bar */))
}

#[doc = "random-183: Random guards (random.md:184)."]
#[doc = "`not (device is cannula or (spo2 <= safe.low or retains-gas))`"]
fn never_random_183(seen: &Observed<'_>) -> Truth {
    !(seen.device_is(device::CANNULA) | (at_most(seen.saturation(), Some(Percent::tabled(88.0) /* safe.low: 88 % */)) | seen.has_condition(condition::RETAINS_GAS)))
}

#[doc = "random-184: Random guards (random.md:185)."]
#[doc = "`not device is blow-by`"]
fn never_random_184(seen: &Observed<'_>) -> Truth {
    !seen.device_is(device::BLOW_BY)
}

#[doc = "random-185: Random guards (random.md:186)."]
#[doc = "`not not pressure < fill.low`"]
fn never_random_185(seen: &Observed<'_>) -> Truth {
    !!less(seen.pressure, Some(Pressure::tabled(5000000.0) /* fill.low: 50 bar */))
}

#[doc = "random-186: Random guards (random.md:187)."]
#[doc = "`not (flow in 1 L/min to 6 L/min or group is newborn) and not minutes left = 0 s`"]
fn never_random_186(seen: &Observed<'_>) -> Truth {
    !(within(seen.flow, Range { low: Limit::Included(Flow::tabled(1.0)), high: Limit::Included(Flow::tabled(6.0)) } /* 1 to 6 L/min */) | seen.group_is(group::NEWBORN))
        & !equal(seen.minutes_left, Some(Time::tabled(0.0, TimeUnit::Second) /* 0 s */))
}

#[doc = "random-187: Random guards (random.md:188)."]
#[doc = "`not temperature < 104 °F or (flow <= 1 L/min and pressure <= reserve)`"]
fn never_random_187(seen: &Observed<'_>) -> Truth {
    !less(seen.temperature, Some(Temperature::tabled(40.0) /* 40 °C */))
        | (at_most(seen.flow, Some(Flow::tabled(1.0) /* 1 L/min */)) & at_most(seen.pressure, Some(Pressure::tabled(3447378.64658418) /* reserve: 500 psi */)))
}

#[doc = "random-188: Random guards (random.md:189)."]
#[doc = "`((grease near or flow = 1 L/min) and pressure < 13.7 MPa) or (pressure in fill and (pressure != 137 bar or minutes left in under 1 h))`"]
fn never_random_188(seen: &Observed<'_>) -> Truth {
    ((seen.fact(Fact::GreaseNear) | equal(seen.flow, Some(Flow::tabled(1.0) /* 1 L/min */))) & less(seen.pressure, Some(Pressure::tabled(13700000.0) /* 137 bar */)))
        | (within(seen.pressure, Range { low: Limit::Included(Pressure::tabled(5000000.0)), high: Limit::Included(Pressure::tabled(13700000.0)) } /* 50 to 137 bar */) & (not_equal(seen.pressure, Some(Pressure::tabled(13700000.0) /* 137 bar */)) | within(seen.minutes_left, Range { low: Limit::None, high: Limit::Excluded(Time::tabled(1.0, TimeUnit::Hour)) } /* under 1 h */)))
}

#[doc = "random-189: Random guards (random.md:190)."]
#[doc = "`(temperature != -20 °C or minutes left in 0 h to 1 h) and (cylinder secured and temperature <= frost.high and minutes left < 90 s)`"]
fn never_random_189(seen: &Observed<'_>) -> Truth {
    (not_equal(seen.temperature, Some(Temperature::tabled(-20.0) /* -20 °C */)) | within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(0.0, TimeUnit::Hour)), high: Limit::Included(Time::tabled(1.0, TimeUnit::Hour)) } /* 0 to 1 h */))
        & (seen.fact(Fact::CylinderSecured) & at_most(seen.temperature, Some(Temperature::tabled(-10.0) /* frost.high: -10 °C */)) & less(seen.minutes_left, Some(Time::tabled(90.0, TimeUnit::Second) /* 90 s */)))
}

#[doc = "random-190: Random guards (random.md:191)."]
#[doc = "`not temperature in under -4 °F or (temperature < 14 °F or pressure <= 137 bar)`"]
fn never_random_190(seen: &Observed<'_>) -> Truth {
    !within(seen.temperature, Range { low: Limit::None, high: Limit::Excluded(Temperature::tabled(-20.0)) } /* under -20 °C */)
        | (less(seen.temperature, Some(Temperature::tabled(-10.0) /* -10 °C */)) | at_most(seen.pressure, Some(Pressure::tabled(13700000.0) /* 137 bar */)))
}

#[doc = "random-191: Random guards (random.md:192)."]
#[doc = "`not (pressure < 137 bar and reservoir filled)`"]
fn never_random_191(seen: &Observed<'_>) -> Truth {
    !(less(seen.pressure, Some(Pressure::tabled(13700000.0) /* 137 bar */)) & seen.fact(Fact::ReservoirFilled))
}

#[doc = "random-192: Random guards (random.md:193)."]
#[doc = "`not (spo2 != target.high and minutes wanted < ride.high)`"]
fn never_random_192(seen: &Observed<'_>) -> Truth {
    !(not_equal(seen.saturation(), seen.target_high()) & less(seen.minutes_wanted, Some(Time::tabled(2.0, TimeUnit::Hour) /* ride.high: 2 h */)))
}

#[doc = "random-193: Random guards (random.md:194)."]
#[doc = "`pressure < reserve and device is blow-by and (cylinder laid down and minutes left > 2 h)`"]
fn never_random_193(seen: &Observed<'_>) -> Truth {
    less(seen.pressure, Some(Pressure::tabled(3447378.64658418) /* reserve: 500 psi */))
        & seen.device_is(device::BLOW_BY)
        & (seen.fact(Fact::CylinderLaidDown) & greater(seen.minutes_left, Some(Time::tabled(2.0, TimeUnit::Hour) /* 2 h */)))
}

#[doc = "random-194: Random guards (random.md:195)."]
#[doc = "`(flow != strong.low and not cylinder laid down) or not flow >= 10 L/min`"]
fn never_random_194(seen: &Observed<'_>) -> Truth {
    (not_equal(seen.flow, Some(Flow::tabled(4.0) /* strong.low: 4 L/min */)) & !seen.fact(Fact::CylinderLaidDown))
        | !at_least(seen.flow, Some(Flow::tabled(10.0) /* 10 L/min */))
}

#[doc = "random-195: Random guards (random.md:196)."]
#[doc = "`(minutes wanted = 1.5 h or group is child) and not spo2 < target.high`"]
fn never_random_195(seen: &Observed<'_>) -> Truth {
    (equal(seen.minutes_wanted, Some(Time::tabled(1.5, TimeUnit::Hour) /* 1.5 h */)) | seen.group_is(group::CHILD))
        & !less(seen.saturation(), seen.target_high())
}

#[doc = "random-196: Random guards (random.md:197)."]
#[doc = "`not device is cannula`"]
fn never_random_196(seen: &Observed<'_>) -> Truth {
    !seen.device_is(device::CANNULA)
}

#[doc = "random-197: Random guards (random.md:198)."]
#[doc = "`(minutes left in under 1.5 h and device is mask) or (temperature in 14 °F to 32 °F and device is cannula)`"]
fn never_random_197(seen: &Observed<'_>) -> Truth {
    (within(seen.minutes_left, Range { low: Limit::None, high: Limit::Excluded(Time::tabled(1.5, TimeUnit::Hour)) } /* under 1.5 h */) & seen.device_is(device::MASK))
        | (within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(-10.0)), high: Limit::Included(Temperature::tabled(0.0)) } /* -10 to 0 °C */) & seen.device_is(device::CANNULA))
}

#[doc = "random-198: Random guards (random.md:199)."]
#[doc = "`not (device is mask or cylinder standing free)`"]
fn never_random_198(seen: &Observed<'_>) -> Truth {
    !(seen.device_is(device::MASK) | seen.fact(Fact::CylinderStandingFree))
}

#[doc = "random-199: Random guards (random.md:200)."]
#[doc = "`not (outlet clear or outlet clear)`"]
fn never_random_199(seen: &Observed<'_>) -> Truth {
    !(seen.fact(Fact::OutletClear) | seen.fact(Fact::OutletClear))
}

#[doc = "random-200: Random guards (random.md:201)."]
#[doc = "`not (pressure = 13700 kPa or flame near)`"]
fn never_random_200(seen: &Observed<'_>) -> Truth {
    !(equal(seen.pressure, Some(Pressure::tabled(13700000.0) /* 137 bar */)) | seen.fact(Fact::FlameNear))
}

#[doc = "random-201: Random guards (random.md:202)."]
#[doc = "`(device is bag and not minutes left < 600 s) or regulator seated`"]
fn never_random_201(seen: &Observed<'_>) -> Truth {
    (seen.device_is(device::BAG) & !less(seen.minutes_left, Some(Time::tabled(600.0, TimeUnit::Second) /* 600 s */)))
        | seen.fact(Fact::RegulatorSeated)
}

#[doc = "random-202: Random guards (random.md:203)."]
#[doc = "`not (device has reservoir and device is cannula and temperature < room.low)`"]
fn never_random_202(seen: &Observed<'_>) -> Truth {
    !(seen.device_has_reservoir(Guards.rules()) & seen.device_is(device::CANNULA) & less(seen.temperature, Some(Temperature::tabled(10.0) /* room.low: 10 °C */)))
}

#[doc = "random-203: Random guards (random.md:204)."]
#[doc = "`not pressure = fill.low`"]
fn never_random_203(seen: &Observed<'_>) -> Truth {
    !equal(seen.pressure, Some(Pressure::tabled(5000000.0) /* fill.low: 50 bar */))
}

#[doc = "random-204: Random guards (random.md:205)."]
#[doc = "`pressure != fill.low or (flame near or device is cannula)`"]
fn never_random_204(seen: &Observed<'_>) -> Truth {
    not_equal(seen.pressure, Some(Pressure::tabled(5000000.0) /* fill.low: 50 bar */))
        | (seen.fact(Fact::FlameNear) | seen.device_is(device::CANNULA))
}

#[doc = "random-205: Random guards (random.md:206)."]
#[doc = "`not (wheezes and pressure > 5000 kPa)`"]
fn never_random_205(seen: &Observed<'_>) -> Truth {
    !(seen.has_condition(condition::WHEEZES) & greater(seen.pressure, Some(Pressure::tabled(5000000.0) /* 50 bar */)))
}

#[doc = "random-206: Random guards (random.md:207)."]
#[doc = "`group is newborn and temperature != room.low and (reservoir filled and flow < 2.5 L/min and (group is child or retains-gas))`"]
fn never_random_206(seen: &Observed<'_>) -> Truth {
    seen.group_is(group::NEWBORN)
        & not_equal(seen.temperature, Some(Temperature::tabled(10.0) /* room.low: 10 °C */))
        & (seen.fact(Fact::ReservoirFilled) & less(seen.flow, Some(Flow::tabled(2.5) /* 2.5 L/min */)) & (seen.group_is(group::CHILD) | seen.has_condition(condition::RETAINS_GAS)))
}

#[doc = "random-207: Random guards (random.md:208)."]
#[doc = "`group is child or regulator pressurised or (minutes wanted >= 120 min and device is cannula)`"]
fn never_random_207(seen: &Observed<'_>) -> Truth {
    seen.group_is(group::CHILD)
        | seen.fact(Fact::RegulatorPressurised)
        | (at_least(seen.minutes_wanted, Some(Time::tabled(120.0, TimeUnit::Minute) /* 120 min */)) & seen.device_is(device::CANNULA))
}

#[doc = "random-208: Random guards (random.md:209)."]
#[doc = "`not (retains-gas and group is child) or ((spo2 >= urgent or spo2 = urgent) and (spo2 = target.low and spo2 in over 88.1 %))`"]
fn never_random_208(seen: &Observed<'_>) -> Truth {
    !(seen.has_condition(condition::RETAINS_GAS) & seen.group_is(group::CHILD))
        | ((at_least(seen.saturation(), Some(Percent::tabled(85.0) /* urgent: 85 % */)) | equal(seen.saturation(), Some(Percent::tabled(85.0) /* urgent: 85 % */))) & (equal(seen.saturation(), seen.target_low()) & within(seen.saturation(), Range { low: Limit::Excluded(Percent::tabled(88.1)), high: Limit::None } /* over 88.1 % */)))
}

#[doc = "random-209: Random guards (random.md:210)."]
#[doc = "`minutes left in 0 min to 2 h or (device is blow-by and flame near)`"]
fn never_random_209(seen: &Observed<'_>) -> Truth {
    within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(0.0, TimeUnit::Minute)), high: Limit::Included(Time::tabled(2.0, TimeUnit::Hour)) } /* 0 min to 2 h */)
        | (seen.device_is(device::BLOW_BY) & seen.fact(Fact::FlameNear))
}

#[doc = "random-210: Random guards (random.md:211)."]
#[doc = "`not (minutes left >= 120 min or flow = strong.low)`"]
fn never_random_210(seen: &Observed<'_>) -> Truth {
    !(at_least(seen.minutes_left, Some(Time::tabled(120.0, TimeUnit::Minute) /* 120 min */)) | equal(seen.flow, Some(Flow::tabled(4.0) /* strong.low: 4 L/min */)))
}

#[doc = "random-211: Random guards (random.md:212)."]
#[doc = "`pressure in 13700 kPa to 13700 kPa and cylinder open`"]
fn never_random_211(seen: &Observed<'_>) -> Truth {
    within(seen.pressure, Range { low: Limit::Included(Pressure::tabled(13700000.0)), high: Limit::Included(Pressure::tabled(13700000.0)) } /* 137 to 137 bar */)
        & seen.fact(Fact::CylinderOpen)
}

#[doc = "random-212: Random guards (random.md:213)."]
#[doc = "`flow >= device.least-flow and (spo2 != urgent and retains-gas)`"]
fn never_random_212(seen: &Observed<'_>) -> Truth {
    seen.device_flow(Guards.rules(), |limits| at_least(seen.flow, limits.low.value()))
        & (not_equal(seen.saturation(), Some(Percent::tabled(85.0) /* urgent: 85 % */)) & seen.has_condition(condition::RETAINS_GAS))
}

#[doc = "random-213: Random guards (random.md:214)."]
#[doc = "`(minutes left != wait and not minutes left < 0 s) or (retains-gas or not regulator seated)`"]
fn never_random_213(seen: &Observed<'_>) -> Truth {
    (not_equal(seen.minutes_left, Some(Time::tabled(90.0, TimeUnit::Second) /* wait: 90 s */)) & !less(seen.minutes_left, Some(Time::tabled(0.0, TimeUnit::Second) /* 0 s */)))
        | (seen.has_condition(condition::RETAINS_GAS) | !seen.fact(Fact::RegulatorSeated))
}

#[doc = "random-214: Random guards (random.md:215)."]
#[doc = "`flow in 8 L/min to 12 L/min or (wheezes or flow = strong.low)`"]
fn never_random_214(seen: &Observed<'_>) -> Truth {
    within(seen.flow, Range { low: Limit::Included(Flow::tabled(8.0)), high: Limit::Included(Flow::tabled(12.0)) } /* 8 to 12 L/min */)
        | (seen.has_condition(condition::WHEEZES) | equal(seen.flow, Some(Flow::tabled(4.0) /* strong.low: 4 L/min */)))
}

#[doc = "random-215: Random guards (random.md:216)."]
#[doc = "`not (not temperature = -4 °F and (pressure in 1000 psi to 100 bar or temperature in over 68 °F))`"]
fn never_random_215(seen: &Observed<'_>) -> Truth {
    !(!equal(seen.temperature, Some(Temperature::tabled(-20.0) /* -20 °C */)) & (within(seen.pressure, Range { low: Limit::Included(Pressure::tabled(6894757.29316836)), high: Limit::Included(Pressure::tabled(10000000.0)) } /* 1000 psi to 100 bar */) | within(seen.temperature, Range { low: Limit::Excluded(Temperature::tabled(20.0)), high: Limit::None } /* over 20 °C */)))
}

#[doc = "random-216: Random guards (random.md:217)."]
#[doc = "`group is adult and (pressure <= fill.high or minutes left in 0 s to 15 min)`"]
fn never_random_216(seen: &Observed<'_>) -> Truth {
    seen.group_is(group::ADULT)
        & (at_most(seen.pressure, Some(Pressure::tabled(13700000.0) /* fill.high: 137 bar */)) | within(seen.minutes_left, Range { low: Limit::Included(Time::tabled(0.0, TimeUnit::Second)), high: Limit::Included(Time::tabled(15.0, TimeUnit::Minute)) } /* 0 s to 15 min */))
}

#[doc = "random-217: Random guards (random.md:218)."]
#[doc = "`not not temperature = room.low`"]
fn never_random_217(seen: &Observed<'_>) -> Truth {
    !!equal(seen.temperature, Some(Temperature::tabled(10.0) /* room.low: 10 °C */))
}

#[doc = "random-218: Random guards (random.md:219)."]
#[doc = "`not spo2 >= 88.1 %`"]
fn never_random_218(seen: &Observed<'_>) -> Truth {
    !at_least(seen.saturation(), Some(Percent::tabled(88.1) /* 88.1 % */))
}

#[doc = "random-219: Random guards (random.md:220)."]
#[doc = "`minutes left = wait or pressure <= fill.low or not minutes left = ride.low`"]
fn never_random_219(seen: &Observed<'_>) -> Truth {
    equal(seen.minutes_left, Some(Time::tabled(90.0, TimeUnit::Second) /* wait: 90 s */))
        | at_most(seen.pressure, Some(Pressure::tabled(5000000.0) /* fill.low: 50 bar */))
        | !equal(seen.minutes_left, Some(Time::tabled(10.0, TimeUnit::Minute) /* ride.low: 10 min */))
}

#[doc = "random-220: Random guards (random.md:221)."]
#[doc = "`minutes wanted < minutes left or flow >= 0 mL/min`"]
fn never_random_220(seen: &Observed<'_>) -> Truth {
    less(seen.minutes_wanted, seen.minutes_left)
        | at_least(seen.flow, Some(Flow::tabled(0.0) /* 0 L/min */))
}

#[doc = "random-221: Random guards (random.md:222)."]
#[doc = "`not (temperature in room and minutes left = 0 h) and flow = 12 L/min`"]
fn never_random_221(seen: &Observed<'_>) -> Truth {
    !(within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(10.0)), high: Limit::Included(Temperature::tabled(40.0)) } /* 10 to 40 °C */) & equal(seen.minutes_left, Some(Time::tabled(0.0, TimeUnit::Hour) /* 0 h */)))
        & equal(seen.flow, Some(Flow::tabled(12.0) /* 12 L/min */))
}

#[doc = "random-222: Random guards (random.md:223)."]
#[doc = "`not (flow in at least 15 L/min and spo2 != target.low)`"]
fn never_random_222(seen: &Observed<'_>) -> Truth {
    !(within(seen.flow, Range { low: Limit::Included(Flow::tabled(15.0)), high: Limit::None } /* at least 15 L/min */) & not_equal(seen.saturation(), seen.target_low()))
}

#[doc = "random-223: Random guards (random.md:224)."]
#[doc = "`not device is cannula or cylinder secured or not minutes wanted = 1 h`"]
fn never_random_223(seen: &Observed<'_>) -> Truth {
    !seen.device_is(device::CANNULA)
        | seen.fact(Fact::CylinderSecured)
        | !equal(seen.minutes_wanted, Some(Time::tabled(1.0, TimeUnit::Hour) /* 1 h */))
}

#[doc = "random-224: Random guards (random.md:225)."]
#[doc = "`device has reservoir and (spo2 < 85 % or group is adult)`"]
fn never_random_224(seen: &Observed<'_>) -> Truth {
    seen.device_has_reservoir(Guards.rules())
        & (less(seen.saturation(), Some(Percent::tabled(85.0) /* 85 % */)) | seen.group_is(group::ADULT))
}

#[doc = "random-225: Random guards (random.md:226)."]
#[doc = "`device is mask`"]
fn never_random_225(seen: &Observed<'_>) -> Truth {
    seen.device_is(device::MASK)
}

#[doc = "random-226: Random guards (random.md:227)."]
#[doc = "`not (flow > comfort or (flow in strong or cylinder laid down))`"]
fn never_random_226(seen: &Observed<'_>) -> Truth {
    !(greater(seen.flow, Some(Flow::tabled(2.5) /* comfort: 2.5 L/min */)) | (within(seen.flow, Range { low: Limit::Included(Flow::tabled(4.0)), high: Limit::None } /* at least 4 L/min */) | seen.fact(Fact::CylinderLaidDown)))
}

#[doc = "random-227: Random guards (random.md:228)."]
#[doc = "`wheezes or not minutes left = 0 s`"]
fn never_random_227(seen: &Observed<'_>) -> Truth {
    seen.has_condition(condition::WHEEZES)
        | !equal(seen.minutes_left, Some(Time::tabled(0.0, TimeUnit::Second) /* 0 s */))
}

#[doc = "random-228: Random guards (random.md:229)."]
#[doc = "`not spo2 != 92 % or pressure in over 5000 kPa or not temperature != -10 °C`"]
fn never_random_228(seen: &Observed<'_>) -> Truth {
    !not_equal(seen.saturation(), Some(Percent::tabled(92.0) /* 92 % */))
        | within(seen.pressure, Range { low: Limit::Excluded(Pressure::tabled(5000000.0)), high: Limit::None } /* over 50 bar */)
        | !not_equal(seen.temperature, Some(Temperature::tabled(-10.0) /* -10 °C */))
}

#[doc = "random-229: Random guards (random.md:230)."]
#[doc = "`(minutes wanted in ride and not cylinder secured) or not not grease near`"]
fn never_random_229(seen: &Observed<'_>) -> Truth {
    (within(seen.minutes_wanted, Range { low: Limit::Included(Time::tabled(10.0, TimeUnit::Minute)), high: Limit::Included(Time::tabled(2.0, TimeUnit::Hour)) } /* 10 min to 2 h */) & !seen.fact(Fact::CylinderSecured))
        | !!seen.fact(Fact::GreaseNear)
}

#[doc = "random-230: Random guards (random.md:231)."]
#[doc = "`retains-gas or not retains-gas`"]
fn never_random_230(seen: &Observed<'_>) -> Truth {
    seen.has_condition(condition::RETAINS_GAS)
        | !seen.has_condition(condition::RETAINS_GAS)
}

#[doc = "random-231: Random guards (random.md:232)."]
#[doc = "`not (group is child or regulator pressurised)`"]
fn never_random_231(seen: &Observed<'_>) -> Truth {
    !(seen.group_is(group::CHILD) | seen.fact(Fact::RegulatorPressurised))
}

#[doc = "random-232: Random guards (random.md:233)."]
#[doc = "`spo2 > 85 % or ((device has reservoir and washer fitted) or wheezes)`"]
fn never_random_232(seen: &Observed<'_>) -> Truth {
    greater(seen.saturation(), Some(Percent::tabled(85.0) /* 85 % */))
        | ((seen.device_has_reservoir(Guards.rules()) & seen.fact(Fact::WasherFitted)) | seen.has_condition(condition::WHEEZES))
}

#[doc = "random-233: Random guards (random.md:234)."]
#[doc = "`not (minutes wanted <= 60 min and temperature in room)`"]
fn never_random_233(seen: &Observed<'_>) -> Truth {
    !(at_most(seen.minutes_wanted, Some(Time::tabled(60.0, TimeUnit::Minute) /* 60 min */)) & within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(10.0)), high: Limit::Included(Temperature::tabled(40.0)) } /* 10 to 40 °C */))
}

#[doc = "random-234: Random guards (random.md:235)."]
#[doc = "`(regulator seated and spo2 in safe) or minutes wanted >= ride.high`"]
fn never_random_234(seen: &Observed<'_>) -> Truth {
    (seen.fact(Fact::RegulatorSeated) & within(seen.saturation(), Range { low: Limit::Excluded(Percent::tabled(88.0)), high: Limit::None } /* over 88 % */))
        | at_least(seen.minutes_wanted, Some(Time::tabled(2.0, TimeUnit::Hour) /* ride.high: 2 h */))
}

#[doc = "random-235: Random guards (random.md:236)."]
#[doc = "`(pressure = reserve and minutes left in over 1 h) or not minutes wanted in 0 h to 60 min`"]
fn never_random_235(seen: &Observed<'_>) -> Truth {
    (equal(seen.pressure, Some(Pressure::tabled(3447378.64658418) /* reserve: 500 psi */)) & within(seen.minutes_left, Range { low: Limit::Excluded(Time::tabled(1.0, TimeUnit::Hour)), high: Limit::None } /* over 1 h */))
        | !within(seen.minutes_wanted, Range { low: Limit::Included(Time::tabled(0.0, TimeUnit::Hour)), high: Limit::Included(Time::tabled(60.0, TimeUnit::Minute)) } /* 0 h to 60 min */)
}

#[doc = "random-236: Random guards (random.md:237)."]
#[doc = "`cylinder laid down or spo2 <= 88.1 % or ((temperature in at least 14 °F and spo2 in under 98 %) or temperature != 32 °F)`"]
fn never_random_236(seen: &Observed<'_>) -> Truth {
    seen.fact(Fact::CylinderLaidDown)
        | at_most(seen.saturation(), Some(Percent::tabled(88.1) /* 88.1 % */))
        | ((within(seen.temperature, Range { low: Limit::Included(Temperature::tabled(-10.0)), high: Limit::None } /* at least -10 °C */) & within(seen.saturation(), Range { low: Limit::None, high: Limit::Excluded(Percent::tabled(98.0)) } /* under 98 % */)) | not_equal(seen.temperature, Some(Temperature::tabled(0.0) /* 0 °C */)))
}

#[doc = "random-237: Random guards (random.md:238)."]
#[doc = "`(pressure in at most 1000 psi and reservoir filled) or (flow = comfort or pressure in fill) or pressure > fill.high`"]
fn never_random_237(seen: &Observed<'_>) -> Truth {
    (within(seen.pressure, Range { low: Limit::None, high: Limit::Included(Pressure::tabled(6894757.29316836)) } /* at most 1000 psi */) & seen.fact(Fact::ReservoirFilled))
        | (equal(seen.flow, Some(Flow::tabled(2.5) /* comfort: 2.5 L/min */)) | within(seen.pressure, Range { low: Limit::Included(Pressure::tabled(5000000.0)), high: Limit::Included(Pressure::tabled(13700000.0)) } /* 50 to 137 bar */))
        | greater(seen.pressure, Some(Pressure::tabled(13700000.0) /* fill.high: 137 bar */))
}

#[doc = "random-238: Random guards (random.md:239)."]
#[doc = "`flow >= 12 L/min and (group is adult and device is blow-by)`"]
fn never_random_238(seen: &Observed<'_>) -> Truth {
    at_least(seen.flow, Some(Flow::tabled(12.0) /* 12 L/min */))
        & (seen.group_is(group::ADULT) & seen.device_is(device::BLOW_BY))
}

#[doc = "random-239: Random guards (random.md:240)."]
#[doc = "`not (flow > device.least-flow or retains-gas)`"]
fn never_random_239(seen: &Observed<'_>) -> Truth {
    !(seen.device_flow(Guards.rules(), |limits| greater(seen.flow, limits.low.value())) | seen.has_condition(condition::RETAINS_GAS))
}
