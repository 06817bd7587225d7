package org.geneticsrules.benchmarks;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.trait.Confusions;

/** The models that matings are measured under. They are made for measuring and describe no animal. */
final class Models {

    static final String DOMINANT = "dark";
    static final String RECESSIVE = "pale";
    static final String HIDDEN = "none seen";

    private Models() {}

    /** Loci with two alleles, each seen in a trait of its own: the most phenotypes that n such loci can have, 2^n. */
    static Model visible(int loci) {
        return simple("measure.visible", loci, false);
    }

    /** The same loci, each recessive hiding all later traits: n + 1 phenotypes. */
    static Model chain(int loci) {
        return simple("measure.chain", loci, true);
    }

    /** The same as {@link #chain}, all loci on one chromosome with a recombination fraction of one tenth between neighbours. */
    static Model group(int loci) {
        return simple("measure.group", loci, true);
    }

    /** Masks that each read a locus of the first half and one of the second, so that all combinations of the first half must be remembered. */
    static Model tied(int loci) {
        Catalogue catalogue = Catalogue.builder("measure.tied.traits", "1.0.0")
                .trait("coat", "plain", "patterned")
                .build();
        ModelBuilder model = Model.builder("measure.tied", "1.0.0", catalogue);
        for (int i = 0; i < loci; i++) {
            String locus = "L" + i;
            String dominant = "A" + i;
            String recessive = "a" + i;
            model.locus(
                    locus,
                    at -> at.alleles(dominant, recessive)
                            .dominant(dominant, recessive)
                            .shows(dominant, DOMINANT)
                            .shows(recessive, RECESSIVE));
        }
        model.trait("coat", rule -> rule.otherwise("plain"));
        for (int i = 0; i < loci / 2; i++) {
            model.mask(Mask.of("tie" + i, Condition.where("L" + i, DOMINANT).and("L" + (i + loci / 2), RECESSIVE))
                    .covering("coat", "patterned"));
        }
        return model.build();
    }

    /** One trait of three states by the sum of the doses of all loci, 0 to 2 each, cut into thirds. */
    static Model threshold(int loci) {
        Catalogue catalogue = Catalogue.builder("measure.threshold.traits", "1.0.0")
                .trait("size", "small", "medium", "large")
                .build();
        ModelBuilder model = Model.builder("measure.threshold", "1.0.0", catalogue);
        Map<String, Map<String, Integer>> doses = new LinkedHashMap<>();
        for (int i = 0; i < loci; i++) {
            String locus = "L" + i;
            String more = "A" + i;
            String less = "a" + i;
            model.locus(
                    locus,
                    at -> at.alleles(more, less)
                            .shows(more, "two")
                            .shows(more + "/" + less, "one")
                            .shows(less, "none"));
            doses.put(locus, Map.of("two", 2, "one", 1));
        }
        Map<String, Integer> cuts = new LinkedHashMap<>();
        cuts.put("medium", 2 * loci / 3);
        cuts.put("large", 4 * loci / 3);
        model.trait(
                "size",
                rule -> rule.otherwise(
                        new CaseState.Threshold(doses, Distribution.certain(0), "small", cuts), Optional.empty()));
        return model.build();
    }

    /** Heterozygous at every locus of {@link #group}, all dominant alleles on one strand. */
    static Genotype coupled(Model model) {
        List<String> dominant = new ArrayList<>();
        List<String> recessive = new ArrayList<>();
        for (Locus locus : model.loci().values()) {
            List<Allele> alleles = List.copyOf(locus.alleles().values());
            dominant.add(alleles.get(0).symbol());
            recessive.add(alleles.get(1).symbol());
        }
        return Genotype.parse(model, "[" + String.join(" ", dominant) + "]/[" + String.join(" ", recessive) + "]");
    }

    private static Model simple(String id, int loci, boolean masking) {
        Catalogue.Builder catalogue = Catalogue.builder(id + ".traits", "1.0.0");
        for (int i = 0; i < loci; i++) {
            catalogue.trait(trait(i), DOMINANT, RECESSIVE, HIDDEN);
        }
        ModelBuilder model = Model.builder(id, "1.0.0", catalogue.build());
        for (int i = 0; i < loci; i++) {
            String locus = "L" + i;
            String dominant = "A" + i;
            String recessive = "a" + i;
            model.locus(
                    locus,
                    at -> at.alleles(dominant, recessive)
                            .dominant(dominant, recessive)
                            .shows(dominant, DOMINANT)
                            .shows(recessive, RECESSIVE));
            model.trait(
                    trait(i),
                    rule -> rule.when(Condition.where(locus, DOMINANT), DOMINANT)
                            .otherwise(RECESSIVE));
            if (masking && i < loci - 1) {
                Mask mask = Mask.of("m" + i, Condition.where(locus, RECESSIVE));
                for (int later = i + 1; later < loci; later++) {
                    mask = mask.covering(trait(later), HIDDEN);
                }
                model.mask(mask);
            }
        }
        if (id.equals("measure.group")) {
            List<String> all = IntStream.range(0, loci).mapToObj(i -> "L" + i).toList();
            model.group(LinkageGroup.autosomal("g", all, Collections.nCopies(loci - 1, Probability.of(1, 10))));
        }
        return model.build();
    }

    private static String trait(int number) {
        return "trait " + number;
    }

    /** Heterozygous at every locus of {@link #visible} or {@link #chain}. */
    static Genotype heterozygote(Model model) {
        List<AllelePair> pairs = new ArrayList<>();
        for (Locus locus : model.loci().values()) {
            pairs.add(locus.pair(0, 1));
        }
        return Genotype.of(model, pairs);
    }

    /**
     * Six loci with a series of five alleles, three of three and two of two, in the manner of a coat: the bottom of the series leaves
     * the coat white, and so does the bottom allele of the spotting locus; both look the same and hide five traits.
     *
     * <p>It has 29,160 genotypes and 434 phenotypes.
     */
    static Model coat() {
        return sixLoci()
                .mask(hiding("all white", Condition.where("S", "all")).covering("depth", "white"))
                .build();
    }

    /**
     * The same six loci without the second cause of white, so that every record is one box, and with all alleles of a locus equally
     * common.
     */
    static Model recordedCoat() {
        return evenly(sixLoci()).build();
    }

    /** Ten beliefs about {@link #recordedCoat}: that all live alike, or that those who express one of nine states live three times in four. */
    static List<Model> hypotheses() {
        List<Model> all = new ArrayList<>(List.of(recordedCoat()));
        for (String weak : List.of(
                "D full", "D medium", "D light", "D points", "D white", "B tan", "P flecked", "T dilute", "H long")) {
            String[] words = weak.split(" ", -1);
            all.add(evenly(sixLoci())
                    .viability(new Viability(
                            weak,
                            words[0],
                            Set.of(words[1]),
                            Optional.empty(),
                            Probability.of(3, 4),
                            Probability.ONE,
                            Optional.empty()))
                    .build());
        }
        return all;
    }

    private static ModelBuilder evenly(ModelBuilder model) {
        Model bare = sixLoci().build();
        model.population(
                "even",
                population -> bare.loci().values().forEach(locus -> {
                    int alleles = locus.alleles().size();
                    locus.alleles()
                            .keySet()
                            .forEach(id -> population.frequency(locus.id(), id, Probability.of(1, alleles)));
                }));
        return model;
    }

    /** Now and then a white animal of {@link #epistasis} is written down as black: that ties both loci of every black one. */
    static Confusions misread() {
        return Confusions.of(List.of(new Confusion("hue", "white", "black", Optional.empty(), Probability.of(1, 100))));
    }

    /** Two loci, of which the recessive of one hides the other. */
    static Model epistasis() {
        Catalogue catalogue = Catalogue.builder("measure.epistasis.traits", "1.0.0")
                .trait("hue", "black", "brown", "white")
                .build();
        return Model.builder("measure.epistasis", "1.0.0", catalogue)
                .locus(
                        "C",
                        at -> at.alleles("C", "c")
                                .dominant("C", "c")
                                .shows("C", "full")
                                .shows("c", "none"))
                .locus(
                        "B",
                        at -> at.alleles("B", "b")
                                .dominant("B", "b")
                                .shows("B", "dark")
                                .shows("b", "light"))
                .trait(
                        "hue",
                        rule -> rule.when(Condition.where("B", "light"), "brown")
                                .otherwise("black"))
                .mask(Mask.of("white", Condition.where("C", "none")).covering("hue", "white"))
                .population(
                        "even",
                        population -> population
                                .frequency("C", "C", Probability.of(1, 2))
                                .frequency("C", "c", Probability.of(1, 2))
                                .frequency("B", "B", Probability.of(1, 2))
                                .frequency("B", "b", Probability.of(1, 2)))
                .build();
    }

    /** The trait that shows what a locus of {@link #recordedCoat} expresses. */
    static String traitOf(Locus locus) {
        return switch (locus.id()) {
            case "D" -> "depth";
            case "B" -> "hue";
            case "P" -> "pattern";
            case "T" -> "tone";
            case "H" -> "hair";
            default -> "marking";
        };
    }

    private static ModelBuilder sixLoci() {
        Catalogue catalogue = Catalogue.builder("measure.coat.traits", "1.0.0")
                .trait("depth", "full", "medium", "light", "points", "white")
                .trait("hue", "black", "brown", "tan", HIDDEN)
                .trait("pattern", "solid", "banded", "flecked", HIDDEN)
                .trait("tone", "dense", "dilute", HIDDEN)
                .trait("hair", "short", "long")
                .trait("marking", "plain", "marked", "broad", HIDDEN)
                .build();
        ModelBuilder model = Model.builder("measure.coat", "1.0.0", catalogue);
        series(model, "D", "depth", "full", "medium", "light", "points", "white");
        series(model, "B", "hue", "black", "brown", "tan");
        series(model, "P", "pattern", "solid", "banded", "flecked");
        series(model, "T", "tone", "dense", "dilute");
        series(model, "H", "hair", "short", "long");
        model.locus(
                "S",
                at -> at.alleles("S1", "S2", "S3")
                        .expressions("plain", "marked", "broad", "all")
                        .dominant("S1", "S3")
                        .dominant("S2", "S3")
                        .shows("S1", "plain")
                        .shows("S1/S2", "marked")
                        .shows("S2", "broad")
                        .shows("S3", "all"));
        model.trait(
                "marking",
                rule -> rule.when(Condition.where("S", "marked"), "marked")
                        .when(Condition.where("S", "broad"), "broad")
                        .otherwise("plain"));
        model.mask(hiding("no depth", Condition.where("D", "white")));
        return model;
    }

    private static Mask hiding(String id, Condition when) {
        return Mask.of(id, when)
                .covering("hue", HIDDEN)
                .covering("pattern", HIDDEN)
                .covering("tone", HIDDEN)
                .covering("marking", HIDDEN);
    }

    /** A locus whose alleles are dominant in declared order, and the trait that shows what it expresses. */
    private static void series(ModelBuilder model, String locus, String trait, String... states) {
        model.locus(locus, at -> {
            for (int i = 0; i < states.length; i++) {
                at.alleles(locus + (i + 1)).shows(locus + (i + 1), states[i]);
                if (i > 0) {
                    at.dominant(locus + i, locus + (i + 1));
                }
            }
        });
        model.trait(trait, rule -> {
            for (String state : states) {
                rule.when(Condition.where(locus, state), state);
            }
        });
    }

    /** The genotype with the given alleles, two digits per locus in model order, such as {@code 15 13 13 12 12 23}. */
    static Genotype coat(Model model, String digits) {
        List<AllelePair> pairs = new ArrayList<>();
        int at = 0;
        for (Locus locus : model.loci().values()) {
            pairs.add(locus.pair(digits.charAt(at) - '1', digits.charAt(at + 1) - '1'));
            at += 2;
        }
        return Genotype.of(model, pairs);
    }
}
