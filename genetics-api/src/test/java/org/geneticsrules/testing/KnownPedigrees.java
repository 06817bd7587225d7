package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.KindredBuilder;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;

/** Pedigrees of which the answer is known, each with where it is known from. */
public final class KnownPedigrees {

    /** The argument is that of textbooks of genetic counselling. */
    private static final String BAYES =
            "calculated by Bayes' rule, as in Murphy and Chase 1975, Principles of Genetic Counseling (from memory)";

    private static final String WRIGHT =
            "coefficient of inbreeding of Wright 1922, Am. Nat. 56:330 (published); q^2 + pqF (calculated)";

    private static final String AFFECTED = "a/a";
    private static final String CARRIER = "A/a";

    private KnownPedigrees() {}

    /**
     * A question with its answer.
     *
     * @param name what is asked
     * @param source where the answer is from
     * @param model the rules
     * @param kindred the facts
     * @param locus the locus asked for
     * @param event by member, the genotypes of the locus that it must have
     * @param chance how likely it is, given the facts, that all these members have such genotypes
     */
    public record Known(
            String name,
            String source,
            Model model,
            Kindred kindred,
            String locus,
            Map<String, Set<String>> event,
            Probability chance) {

        @Override
        public String toString() {
            return name;
        }
    }

    /**
     * Lists them all.
     *
     * @return questions with their answers
     */
    public static List<Known> all() {
        List<Known> all = new ArrayList<>();
        clearYoung(all);
        twoSibs(all);
        sonsOfADaughter(all);
        penetrance(all);
        all.add(known(
                "carrier among the unaffected where one in 2500 is affected",
                BAYES,
                recessive(),
                new KindredBuilder().member("animal", "female", "one in 2500").shows("coat", "coloured", "animal"),
                Map.of("animal", Set.of(CARRIER)),
                "2/51"));
        inbreeding(all);
        maleLook(all);
        return all;
    }

    // ---- models
    // ---------------------------------------------------------------------------------------------------------------

    /**
     * A recessive without pigment.
     *
     * @return the model, whose populations {@code even}, {@code one in 100} and {@code one in 2500} tell how common the recessive
     *     homozygote is; in the first, one animal of four
     */
    public static Model recessive() {
        return populations(model("recessive", "coat", "coloured", "white")
                        .locus(
                                "A",
                                locus -> locus.alleles("A", "a")
                                        .dominant("A", "a")
                                        .shows("A", "full")
                                        .shows("a", "none"))
                        .trait(
                                "coat",
                                rule -> rule.when(Condition.where("A", "none"), "white")
                                        .otherwise("coloured")))
                .build();
    }

    private static Model recessiveOnX() {
        return populations(model("recessive-on-x", "sight", "clear", "affected")
                        .locus(
                                "A",
                                locus -> locus.alleles("A", "a")
                                        .dominant("A", "a")
                                        .shows("A", "full")
                                        .shows("a", "none"))
                        .group(LinkageGroup.single(Transmission.X, "A"))
                        .trait(
                                "sight",
                                rule -> rule.when(Condition.where("A", "none"), "affected")
                                        .otherwise("clear")))
                .build();
    }

    private static Model recessiveOfMales() {
        return populations(model("recessive-of-males", "coat", "coloured", "white")
                        .locus(
                                "A",
                                locus -> locus.alleles("A", "a")
                                        .dominant("A", "a")
                                        .shows("A", "full")
                                        .shows("a", "none"))
                        .trait(
                                "coat",
                                rule -> rule.when(
                                                Condition.where("A", "none").and(Sex.VARIABLE, Sex.MALE.word()),
                                                "white")
                                        .otherwise("coloured")))
                .build();
    }

    private static Model dominant(Probability penetrance) {
        return populations(model("dominant-at-" + penetrance.toDecimal(1), "marks", "some", "none")
                        .locus(
                                "A",
                                locus -> locus.alleles("A", "a")
                                        .dominant("A", "a")
                                        .shows("A", "marked")
                                        .shows("a", "plain"))
                        .trait(
                                "marks",
                                rule -> rule.when(
                                                "marked",
                                                Condition.where("A", "marked"),
                                                new CaseState.Chance(chances(penetrance)))
                                        .otherwise("none")))
                .build();
    }

    private static Distribution<String> chances(Probability penetrance) {
        Map<String, Probability> chances = new LinkedHashMap<>();
        chances.put("some", penetrance);
        chances.put("none", penetrance.complement());
        return Distribution.of(chances);
    }

    private static ModelBuilder model(String id, String trait, String... states) {
        return Model.builder(
                id,
                "1.0.0",
                Catalogue.builder(id + ".traits", "1.0.0").trait(trait, states).build());
    }

    private static ModelBuilder populations(ModelBuilder builder) {
        population(builder, "even", 2);
        population(builder, "one in 100", 10);
        population(builder, "one in 2500", 50);
        return builder;
    }

    private static void population(ModelBuilder builder, String id, int alleles) {
        builder.population(
                id,
                population -> population
                        .frequency("A", "A", Probability.of(alleles - 1L, alleles))
                        .frequency("A", "a", Probability.of(1, alleles)));
    }

    // ---- pedigrees
    // ------------------------------------------------------------------------------------------------------------

    /** An unaffected animal with an affected sib and unaffected parents, whatever the population. */
    private static KindredBuilder sib(KindredBuilder builder, String animal, String sex) {
        String dam = "dam of " + animal;
        String sire = "sire of " + animal;
        String other = "sib of " + animal;
        return builder.member(dam, "female", "one in 100")
                .member(sire, "male", "one in 100")
                .member(animal, sex, "")
                .litter(dam, sire, "", animal, other)
                .shows("coat", "coloured", dam, sire, animal)
                .shows("coat", "white", other);
    }

    private static void clearYoung(List<Known> all) {
        List<String> byAffected = List.of("2/3", "1/2", "1/3", "1/5", "1/9", "1/17", "1/33");
        List<String> byCarrier = List.of("2/3", "3/5", "9/17", "27/59", "81/209", "243/755");
        Map<String, List<String>> mates = new LinkedHashMap<>();
        mates.put(AFFECTED, byAffected);
        mates.put(CARRIER, byCarrier);
        mates.forEach((mate, chances) -> {
            for (int n = 0; n < chances.size(); n++) {
                KindredBuilder builder = sib(new KindredBuilder(), "animal", "female");
                if (n > 0) {
                    String[] young = numbered("young", n);
                    builder.member("mate", "male", "even")
                            .has("mate", "A", mate)
                            .litter("animal", "mate", "", young)
                            .shows("coat", "coloured", young);
                }
                all.add(known(
                        "carrier after " + n + " unaffected young by " + mate,
                        BAYES,
                        recessive(),
                        builder,
                        Map.of("animal", Set.of(CARRIER)),
                        chances.get(n)));
            }
        });
    }

    private static void twoSibs(List<Known> all) {
        List<String> both = List.of("4/9", "3/8", "9/29", "27/107", "81/401");
        for (int n = 0; n < both.size(); n++) {
            KindredBuilder builder = sib(sib(new KindredBuilder(), "dam", "female"), "sire", "male");
            String[] young = numbered("young", n);
            List<String> kits = new ArrayList<>(List.of(young));
            kits.add("next");
            builder.litter("dam", "sire", "", kits.toArray(String[]::new)).shows("coat", "coloured", young);
            all.add(known(
                    "both parents carry after " + n + " unaffected young",
                    BAYES,
                    recessive(),
                    builder,
                    Map.of("dam", Set.of(CARRIER), "sire", Set.of(CARRIER)),
                    both.get(n)));
            if (n == 0) {
                all.add(known(
                        "next kit affected where both parents are sibs of affected animals",
                        BAYES,
                        recessive(),
                        builder,
                        Map.of("next", Set.of(AFFECTED)),
                        "1/9"));
            }
        }
    }

    private static void sonsOfADaughter(List<Known> all) {
        for (int n = 0; n < 5; n++) {
            KindredBuilder builder = new KindredBuilder()
                    .member("carrier", "female", "even")
                    .member("sire", "male", "even")
                    .member("daughter", "female", "even")
                    .litter("carrier", "sire", "", "daughter")
                    .has("carrier", "A", CARRIER)
                    .shows("sight", "clear", "sire", "daughter");
            String[] sons = numbered("son", n);
            for (String son : sons) {
                builder.member(son, "male", "");
            }
            if (n > 0) {
                builder.litter("daughter", "", "", sons).shows("sight", "clear", sons);
            }
            all.add(known(
                    "daughter of an X-linked carrier carries, with " + n + " unaffected sons",
                    BAYES,
                    recessiveOnX(),
                    builder,
                    Map.of("daughter", Set.of(CARRIER)),
                    "1/" + ((1 << n) + 1)));
        }
    }

    private static void penetrance(List<Known> all) {
        Map<String, String> carriers = new LinkedHashMap<>();
        carriers.put("4/5", "1/6");
        carriers.put("9/10", "1/11");
        carriers.forEach((penetrance, chance) -> all.add(known(
                "carrier among unaffected young of a heterozygote, penetrance " + penetrance,
                BAYES,
                dominant(Probability.parse(penetrance)),
                new KindredBuilder()
                        .member("dam", "female", "even")
                        .member("sire", "male", "even")
                        .litter("dam", "sire", "", "kit")
                        .has("dam", "A", CARRIER)
                        .has("sire", "A", AFFECTED)
                        .shows("marks", "some", "dam")
                        .shows("marks", "none", "kit"),
                Map.of("kit", Set.of(CARRIER)),
                chance)));
    }

    /** With p = 9/10 and q = 1/10, an animal of inbreeding F is affected with chance q^2 + pqF = (1 + 9F)/100. */
    private static void inbreeding(List<Known> all) {
        KindredBuilder unrelated = new KindredBuilder();
        pair(unrelated, "dam", "sire", "kit");
        inbred(all, "unrelated parents", unrelated, "1/100");
        KindredBuilder fullSibs = new KindredBuilder();
        pair(fullSibs, "dam", "sire", "daughter", "son");
        inbred(all, "full sibs", fullSibs.litter("daughter", "son", "", "kit"), "13/400");
        KindredBuilder halfSibs = new KindredBuilder();
        pair(halfSibs, "dam 1", "sire", "daughter");
        halfSibs.member("dam 2", "female", "one in 100").litter("dam 2", "sire", "", "son");
        inbred(all, "half sibs", halfSibs.litter("daughter", "son", "", "kit"), "17/800");
        KindredBuilder back = new KindredBuilder();
        pair(back, "dam", "sire", "daughter");
        inbred(all, "parent and offspring", back.litter("daughter", "sire", "", "kit"), "13/400");
        KindredBuilder cousins = new KindredBuilder();
        pair(cousins, "dam", "sire", "daughter", "son");
        cousins.member("wife", "female", "one in 100").member("husband", "male", "one in 100");
        cousins.litter("daughter", "husband", "", "niece").litter("wife", "son", "", "nephew");
        inbred(all, "first cousins", cousins.litter("niece", "nephew", "", "kit"), "1/64");
        KindredBuilder twice = new KindredBuilder();
        pair(twice, "dam 1", "sire 1", "daughter 1", "son 1");
        pair(twice, "dam 2", "sire 2", "daughter 2", "son 2");
        twice.litter("daughter 1", "son 2", "", "niece").litter("daughter 2", "son 1", "", "nephew");
        inbred(all, "double first cousins", twice.litter("niece", "nephew", "", "kit"), "17/800");
        KindredBuilder second = new KindredBuilder();
        pair(second, "dam", "sire", "daughter", "son");
        // The mates of the two lines are nobody's records.
        second.litter("daughter", "", "one in 100", "niece").litter("", "son", "one in 100", "nephew");
        second.litter("niece", "", "one in 100", "grandniece").litter("", "nephew", "one in 100", "grandnephew");
        inbred(all, "second cousins", second.litter("grandniece", "grandnephew", "", "kit"), "73/6400");
    }

    /** Two kits of unknown sex of two carriers: the white one is a male; of the eight cases of the other one is a white male. */
    private static void maleLook(List<Known> all) {
        KindredBuilder builder = new KindredBuilder()
                .member("dam", "female", "even")
                .member("sire", "male", "even")
                .litter("dam", "sire", "", "white", "coloured")
                .has("dam", "A", CARRIER)
                .has("sire", "A", CARRIER)
                .shows("coat", "white", "white")
                .shows("coat", "coloured", "coloured");
        String source = "calculated by hand";
        all.add(known(
                "kit of unknown sex with a look that only males have",
                source,
                recessiveOfMales(),
                builder,
                Map.of("white", Set.of(AFFECTED)),
                "1"));
        all.add(known(
                "kit of unknown sex without that look",
                source,
                recessiveOfMales(),
                builder,
                Map.of("coloured", Set.of(AFFECTED)),
                "1/7"));
    }

    private static void pair(KindredBuilder builder, String dam, String sire, String... kits) {
        builder.member(dam, "female", "one in 100")
                .member(sire, "male", "one in 100")
                .litter(dam, sire, "", kits);
    }

    private static void inbred(List<Known> all, String parents, KindredBuilder builder, String affected) {
        all.add(known(
                "kit of " + parents + " affected",
                WRIGHT,
                recessive(),
                builder,
                Map.of("kit", Set.of(AFFECTED)),
                affected));
    }

    private static String[] numbered(String name, int count) {
        String[] ids = new String[count];
        for (int i = 0; i < count; i++) {
            ids[i] = name + " " + (i + 1);
        }
        return ids;
    }

    private static Known known(
            String name,
            String source,
            Model model,
            KindredBuilder builder,
            Map<String, Set<String>> event,
            String chance) {
        return new Known(name, source, model, builder.build(), "A", event, Probability.parse(chance));
    }
}
