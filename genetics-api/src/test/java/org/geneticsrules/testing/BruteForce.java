package org.geneticsrules.testing;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;

/**
 * The reference that engines are compared with: a second, slow and obvious reading of a model's document.
 *
 * <p>It takes the document as plain maps, lists and texts ({@link DocumentMaps}) and shares nothing with the library but exact
 * fractions. It lists every genotype, every gamete and every litter, so it is for small models only. It trusts that the document
 * is valid; two deciding masks that disagree are reported all the same, because that is what the model's own check must prevent.
 *
 * <p>The language of the answers is text: a <b>genotype</b> maps every locus to {@code a/b}, allele ids in declared order; a
 * <b>phenotype</b> maps traits to shown states, and a trait about which the model makes no claim is absent.
 *
 * <ol>
 *   <li>Dominance: a homozygote shows what its allele shows; two alleles show what the table says of the pair, else what the
 *       dominant one shows.
 *   <li>Conditions are three-valued: a condition fails if any variable has a forbidden value; else it is unknown if any variable
 *       is; else it holds.
 *   <li>Own state: that of the case that holds; if none holds but some case is unknown, not modelled; if all fail, the
 *       {@code otherwise}, if there is one.
 *   <li>Shown state: a covering mask whose condition is unknown makes the trait not modelled. Of the active masks that cover the
 *       trait, those over which no other active one lies decide. A constant cover shows its state whatever lies beneath; a table
 *       of changes needs the own state.
 * </ol>
 */
public final class BruteForce {

    private enum Truth {
        HOLDS,
        FAILS,
        UNKNOWN
    }

    private BruteForce() {}

    // ---- genotypes
    // -------------------------------------------------------------------------------------------------------------

    /**
     * Lists the loci.
     *
     * @param model a model's document
     * @return locus ids in declared order
     */
    public static List<String> loci(Map<String, Object> model) {
        return new ArrayList<>(object(model, "loci").keySet());
    }

    /**
     * Lists the genotypes of one locus.
     *
     * @param model a model's document
     * @param locus id of a locus
     * @return all {@code a/b} with a declared no later than b
     */
    public static List<String> pairs(Map<String, Object> model, String locus) {
        List<String> alleles = alleles(model, locus);
        List<String> pairs = new ArrayList<>();
        for (int i = 0; i < alleles.size(); i++) {
            for (int j = i; j < alleles.size(); j++) {
                pairs.add(alleles.get(i) + "/" + alleles.get(j));
            }
        }
        return pairs;
    }

    /**
     * Lists every genotype over all loci.
     *
     * @param model a model's document
     * @return full genotypes, the last locus changing fastest
     */
    public static List<Map<String, String>> genotypes(Map<String, Object> model) {
        List<Map<String, String>> all = List.of(new LinkedHashMap<>());
        for (String locus : loci(model)) {
            List<Map<String, String>> longer = new ArrayList<>();
            for (Map<String, String> genotype : all) {
                for (String pair : pairs(model, locus)) {
                    longer.add(with(genotype, locus, pair));
                }
            }
            all = longer;
        }
        return all;
    }

    // ---- expression
    // ------------------------------------------------------------------------------------------------------------

    /**
     * Applies dominance.
     *
     * @param model a model's document
     * @param locus id of a locus
     * @param pair a genotype of the locus
     * @return what it shows as
     */
    public static String expression(Map<String, Object> model, String locus, String pair) {
        Map<String, Object> dominance = object(object(object(model, "loci"), locus), "dominance");
        Map<String, Object> shows = object(dominance, "shows");
        String a = side(pair, "/", 0);
        String b = side(pair, "/", 1);
        if (!a.equals(b)) {
            if (shows.containsKey(a + "/" + b)) {
                return textOr(shows.get(a + "/" + b), "shows");
            }
            if (shows.containsKey(b + "/" + a)) {
                return textOr(shows.get(b + "/" + a), "shows");
            }
        }
        boolean firstShows = a.equals(b) || isDominant(list(dominance.get("order")), a, b);
        return textOr(shows.get(firstShows ? a : b), "shows");
    }

    private static boolean isDominant(List<Object> order, String upper, String lower) {
        for (Object statement : order) {
            String dominant = side(textOr(statement, "order"), " > ", 0);
            String recessive = side(textOr(statement, "order"), " > ", 1);
            if (dominant.equals(upper) && (recessive.equals(lower) || isDominant(order, recessive, lower))) {
                return true;
            }
        }
        return false;
    }

    /**
     * Applies the rule of a trait.
     *
     * @param model a model's document
     * @param genotype a full genotype
     * @param trait id of a trait
     * @return the own state, or empty where it is not modelled
     */
    public static Optional<String> own(Map<String, Object> model, Map<String, String> genotype, String trait) {
        Map<String, Object> rule = object(object(model, "traits"), trait);
        boolean unknown = false;
        for (Object one : object(rule, "cases").values()) {
            Truth truth = truth(model, genotype, object(members(one), "when"));
            if (truth == Truth.HOLDS) {
                return Optional.of((String) members(one).get("state"));
            }
            unknown = unknown || truth == Truth.UNKNOWN;
        }
        boolean rest = !unknown && rule.containsKey("otherwise");
        return rest ? Optional.of(textOr(rule.get("otherwise"), "state")) : Optional.empty();
    }

    private static Truth truth(Map<String, Object> model, Map<String, String> genotype, Map<String, Object> when) {
        boolean unknown = false;
        for (Map.Entry<String, Object> variable : when.entrySet()) {
            String name = variable.getKey();
            Optional<String> value = genotype.containsKey(name)
                    ? Optional.of(expression(model, name, genotype.get(name)))
                    : own(model, genotype, name);
            boolean complement = variable.getValue() instanceof Map;
            List<Object> listed = list(complement ? members(variable.getValue()).get("not") : variable.getValue());
            if (value.isEmpty()) {
                unknown = true;
            } else if (listed.contains(value.get()) == complement) {
                return Truth.FAILS;
            }
        }
        return unknown ? Truth.UNKNOWN : Truth.HOLDS;
    }

    /**
     * Lists the masks that are active.
     *
     * @param model a model's document
     * @param genotype a full genotype
     * @return ids of masks whose condition holds, in declared order
     */
    public static List<String> activeMasks(Map<String, Object> model, Map<String, String> genotype) {
        List<String> active = new ArrayList<>();
        object(model, "masks").forEach((id, mask) -> {
            if (truth(model, genotype, object(members(mask), "when")) == Truth.HOLDS) {
                active.add(id);
            }
        });
        return active;
    }

    /**
     * Applies the rule of a trait and the masks that cover it.
     *
     * @param model a model's document
     * @param genotype a full genotype
     * @param trait id of a trait
     * @return the shown state, or empty where it is not modelled
     * @throws IllegalStateException if two masks that decide show different states
     */
    public static Optional<String> shown(Map<String, Object> model, Map<String, String> genotype, String trait) {
        Map<String, Object> masks = object(model, "masks");
        List<String> active = new ArrayList<>();
        for (Map.Entry<String, Object> mask : masks.entrySet()) {
            if (object(members(mask.getValue()), "covers").containsKey(trait)) {
                Truth truth = truth(model, genotype, object(members(mask.getValue()), "when"));
                if (truth == Truth.UNKNOWN) {
                    return Optional.empty();
                } else if (truth == Truth.HOLDS) {
                    active.add(mask.getKey());
                }
            }
        }
        Optional<String> own = own(model, genotype, trait);
        if (active.isEmpty()) {
            return own;
        }
        Set<String> seen = new LinkedHashSet<>();
        for (String mask : active) {
            if (active.stream().noneMatch(other -> isOver(masks, other, mask))) {
                Object cover = object(members(masks.get(mask)), "covers").get(trait);
                if (cover instanceof String constant) {
                    seen.add(constant);
                } else {
                    own.ifPresent(state -> seen.add((String) members(cover).getOrDefault(state, state)));
                }
            }
        }
        if (seen.size() > 1) {
            throw new IllegalStateException("masks " + active + " show " + trait + " as " + seen + " for " + genotype);
        }
        return seen.stream().findFirst();
    }

    private static boolean isOver(Map<String, Object> masks, String upper, String lower) {
        return list(members(masks.get(upper)).get("over")).stream()
                .anyMatch(next -> next.equals(lower) || isOver(masks, (String) next, lower));
    }

    /**
     * Lists the traits that have a rule and can be seen.
     *
     * @param model a model's document
     * @return trait ids in declared order
     */
    public static List<String> visibleTraits(Map<String, Object> model) {
        List<String> visible = new ArrayList<>();
        object(model, "traits").forEach((trait, rule) -> {
            if (!Boolean.FALSE.equals(members(rule).get("visible"))) {
                visible.add(trait);
            }
        });
        return visible;
    }

    /**
     * Expresses a genotype.
     *
     * @param model a model's document
     * @param genotype a full genotype
     * @param traits the traits asked for
     * @return shown states by trait, in the order asked; a trait that is not modelled here is absent
     */
    public static Map<String, String> phenotype(
            Map<String, Object> model, Map<String, String> genotype, List<String> traits) {
        Map<String, String> seen = new LinkedHashMap<>();
        for (String trait : traits) {
            shown(model, genotype, trait).ifPresent(state -> seen.put(trait, state));
        }
        return seen;
    }

    /**
     * Finds what cannot be read off an animal, by substitution.
     *
     * @param model a model's document
     * @param genotype a full genotype
     * @param traits the traits looked at
     * @return the loci at which another genotype would give the same phenotype
     */
    public static List<String> hiddenLoci(
            Map<String, Object> model, Map<String, String> genotype, List<String> traits) {
        Map<String, String> seen = phenotype(model, genotype, traits);
        List<String> hidden = new ArrayList<>();
        for (String locus : loci(model)) {
            for (String pair : pairs(model, locus)) {
                boolean other = !pair.equals(genotype.get(locus));
                if (other
                        && phenotype(model, with(genotype, locus, pair), traits).equals(seen)) {
                    hidden.add(locus);
                    break;
                }
            }
        }
        return hidden;
    }

    // ---- matings
    // ---------------------------------------------------------------------------------------------------------------

    /**
     * Mates two fully known parents by listing all gametes of both: 2^n times 2^n equally likely choices for n unlinked loci.
     *
     * @param model a model's document
     * @param sire a full genotype
     * @param dam a full genotype
     * @return the genotypes of the young
     */
    public static Distribution<Map<String, String>> offspring(
            Map<String, Object> model, Map<String, String> sire, Map<String, String> dam) {
        List<String> loci = loci(model);
        Map<Map<String, String>, Long> young = new LinkedHashMap<>();
        for (int sperm = 0; sperm < 1 << loci.size(); sperm++) {
            for (int egg = 0; egg < 1 << loci.size(); egg++) {
                Map<String, String> kit = new LinkedHashMap<>();
                for (int l = 0; l < loci.size(); l++) {
                    String locus = loci.get(l);
                    String fromSire = side(sire.get(locus), "/", sperm >> l & 1);
                    String fromDam = side(dam.get(locus), "/", egg >> l & 1);
                    List<String> pairs = pairs(model, locus);
                    String pair = fromSire + "/" + fromDam;
                    kit.put(locus, pairs.contains(pair) ? pair : fromDam + "/" + fromSire);
                }
                young.merge(kit, 1L, Long::sum);
            }
        }
        return Distribution.ofWeights(young);
    }

    /**
     * Mates two parents that are known only as distributions of genotypes, independent of each other.
     *
     * @param model a model's document
     * @param sires the sire's possible genotypes
     * @param dams the dam's possible genotypes
     * @return the genotypes of one young
     */
    public static Distribution<Map<String, String>> offspring(
            Map<String, Object> model,
            Distribution<Map<String, String>> sires,
            Distribution<Map<String, String>> dams) {
        Map<Map<String, String>, Probability> young = new LinkedHashMap<>();
        sires.asMap()
                .forEach((sire, p) -> dams.asMap()
                        .forEach((dam, q) -> offspring(model, sire, dam)
                                .asMap()
                                .forEach((kit, r) -> young.merge(kit, p.times(q).times(r), Probability::plus))));
        return Distribution.of(young);
    }

    /**
     * Looks at animals of several possible genotypes.
     *
     * @param model a model's document
     * @param genotypes possible full genotypes
     * @param traits the traits looked at
     * @return their phenotypes
     */
    public static Distribution<Map<String, String>> phenotypes(
            Map<String, Object> model, Distribution<Map<String, String>> genotypes, List<String> traits) {
        Map<Map<String, String>, Probability> seen = new LinkedHashMap<>();
        genotypes
                .asMap()
                .forEach((genotype, chance) ->
                        seen.merge(phenotype(model, genotype, traits), chance, Probability::plus));
        return Distribution.of(seen);
    }

    // ---- uncertain parents
    // -----------------------------------------------------------------------------------------------------

    /**
     * Weighs a set of genotypes by a population in Hardy-Weinberg proportions, loci independent: p^2 for a homozygote and 2pq for a
     * heterozygote, multiplied over loci and renormalised over the set.
     *
     * @param model a model's document
     * @param set distinct full genotypes
     * @param population id of a population that gives the frequencies of every locus
     * @return the weighted set, or empty if no member of the set can occur in the population
     */
    public static Optional<Distribution<Map<String, String>>> founders(
            Map<String, Object> model, List<Map<String, String>> set, String population) {
        Map<String, Object> frequencies = object(object(object(model, "populations"), population), "frequencies");
        BigInteger common = BigInteger.ONE;
        Map<Map<String, String>, Probability> exact = new LinkedHashMap<>();
        for (Map<String, String> genotype : set) {
            Probability weight = Probability.ONE;
            for (Map.Entry<String, String> locus : genotype.entrySet()) {
                Map<String, Object> shares = object(frequencies, locus.getKey());
                String a = side(locus.getValue(), "/", 0);
                String b = side(locus.getValue(), "/", 1);
                Probability pq =
                        Probability.parse((String) shares.get(a)).times(Probability.parse((String) shares.get(b)));
                weight = weight.times(a.equals(b) ? pq : pq.plus(pq));
            }
            exact.put(genotype, weight);
            common = common.multiply(weight.denominator()).divide(common.gcd(weight.denominator()));
        }
        Map<Map<String, String>, BigInteger> whole = new LinkedHashMap<>();
        for (Map.Entry<Map<String, String>, Probability> entry : exact.entrySet()) {
            Probability weight = entry.getValue();
            if (!weight.isZero()) {
                whole.put(entry.getKey(), weight.numerator().multiply(common.divide(weight.denominator())));
            }
        }
        return whole.isEmpty() ? Optional.empty() : Optional.of(Distribution.ofWeights(whole));
    }

    /**
     * Lists every litter: for each pair of parents, every sequence of phenotypes of its kits.
     *
     * @param model a model's document
     * @param sires the sire's possible genotypes, one for the whole litter
     * @param dams the dam's possible genotypes
     * @param kits number of kits
     * @param traits the traits looked at
     * @return how many kits show each phenotype; phenotypes that no kit shows are absent
     */
    public static Distribution<Map<Map<String, String>, Integer>> litters(
            Map<String, Object> model,
            Distribution<Map<String, String>> sires,
            Distribution<Map<String, String>> dams,
            int kits,
            List<String> traits) {
        Map<Map<Map<String, String>, Integer>, Probability> litters = new LinkedHashMap<>();
        sires.asMap()
                .forEach((sire, p) -> dams.asMap().forEach((dam, q) -> {
                    Distribution<Map<String, String>> kit = phenotypes(model, offspring(model, sire, dam), traits);
                    litter(
                            kit,
                            kits,
                            Map.of(),
                            p.times(q),
                            (litter, chance) -> litters.merge(litter, chance, Probability::plus));
                }));
        return Distribution.of(litters);
    }

    private static void litter(
            Distribution<Map<String, String>> kit,
            int kits,
            Map<Map<String, String>, Integer> soFar,
            Probability chance,
            BiConsumer<Map<Map<String, String>, Integer>, Probability> found) {
        if (kits == 0) {
            found.accept(soFar, chance);
            return;
        }
        kit.asMap().forEach((phenotype, next) -> {
            Map<Map<String, String>, Integer> more = new LinkedHashMap<>(soFar);
            more.merge(phenotype, 1, Integer::sum);
            litter(kit, kits - 1, more, chance.times(next), found);
        });
    }

    /**
     * Counts the kits of a litter that show what is described.
     *
     * @param model a model's document
     * @param sires the sire's possible genotypes, one for the whole litter
     * @param dams the dam's possible genotypes
     * @param kits number of kits
     * @param description states that a kit must show; one that is not modelled for a kit is not shown
     * @return the number of such kits, 0 to {@code kits}, smallest first
     */
    public static Distribution<Integer> counts(
            Map<String, Object> model,
            Distribution<Map<String, String>> sires,
            Distribution<Map<String, String>> dams,
            int kits,
            Map<String, String> description) {
        Map<Integer, Probability> counts = new LinkedHashMap<>();
        litters(model, sires, dams, kits, new ArrayList<>(description.keySet()))
                .asMap()
                .forEach((litter, chance) ->
                        counts.merge(litter.getOrDefault(description, 0), chance, Probability::plus));
        Map<Integer, Probability> sorted = new LinkedHashMap<>();
        new TreeSet<>(counts.keySet()).forEach(count -> sorted.put(count, counts.get(count)));
        return Distribution.of(sorted);
    }

    // ---- reading the document
    // --------------------------------------------------------------------------------------------------

    private static List<String> alleles(Map<String, Object> model, String locus) {
        List<String> ids = new ArrayList<>();
        list(object(object(model, "loci"), locus).get("alleles")).forEach(allele -> ids.add(textOr(allele, "id")));
        return ids;
    }

    private static Map<String, String> with(Map<String, String> genotype, String locus, String pair) {
        Map<String, String> changed = new LinkedHashMap<>(genotype);
        changed.put(locus, pair);
        return changed;
    }

    private static String side(String text, String separator, int which) {
        return text.split(separator, -1)[which];
    }

    /** A statement is written as a bare text, or as an object if it has more to say than its value. */
    private static String textOr(Object node, String name) {
        return node instanceof String text ? text : (String) members(node).get(name);
    }

    private static Map<String, Object> object(Map<String, Object> parent, String name) {
        return parent.containsKey(name) ? members(parent.get(name)) : Map.of();
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> members(Object node) {
        return (Map<String, Object>) node;
    }

    @SuppressWarnings("unchecked")
    private static List<Object> list(Object node) {
        return node == null ? List.of() : (List<Object>) node;
    }
}
