package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.BoxSpace;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/**
 * The genotypes an animal may have: the one type for "partly known", "what is seen allows" and "what a name allows".
 *
 * <p>{@code C/-} is the set of all genotypes with at least one {@code C}. The set is kept as disjoint boxes, each a product of one
 * set of pairs per locus, and is never listed.
 *
 * <p>Where a model {@linkplain Model#distinguishesSex() distinguishes sex}, the sex belongs to what is known of an animal: the set then
 * holds genotypes of females and genotypes of males, each with as many alleles as its sex has strands. What is known of the phase of
 * linked loci is kept apart, as a {@link Phase}.
 *
 * <pre>{@code
 * GenotypeSet sable = GenotypeSet.parse(model, "C/- B/-", OmittedLoci.UNKNOWN);
 * GenotypeSet carrier = sable.and(GenotypeSet.parse(model, "C/c", OmittedLoci.UNKNOWN));
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class GenotypeSet {

    private final Model model;
    private final BoxSet boxes;

    private GenotypeSet(Model model, BoxSet boxes) {
        this.model = model;
        this.boxes = boxes;
    }

    /**
     * A product of sets: any of some sexes with any of some genotypes at each locus.
     *
     * @param sexes the sexes; both where the model does not distinguish them
     * @param pairs the allowed genotypes of every locus in model order
     */
    public record Box(Set<Sex> sexes, Map<String, List<AllelePair>> pairs) {
        /**
         * Copies the collections.
         *
         * @param sexes the sexes
         * @param pairs the allowed genotypes by locus
         */
        public Box {
            sexes = ImmutableSet.copyOf(sexes);
            pairs = ImmutableMap.copyOf(pairs);
        }

        /**
         * Returns the allowed genotypes of a locus.
         *
         * @param locus id of a locus of the model
         * @return genotypes in declared order
         * @throws IllegalArgumentException if the model has no such locus
         */
        public List<AllelePair> at(String locus) {
            List<AllelePair> allowed = pairs.get(locus);
            if (allowed == null) {
                throw new IllegalArgumentException("no locus \"" + locus + "\"; the loci are " + pairs.keySet());
            }
            return allowed;
        }
    }

    /**
     * Returns the set of all genotypes: nothing is known.
     *
     * @param model a model
     * @return the full set
     */
    public static GenotypeSet all(Model model) {
        BoxSpace space = model.genotypeSpace();
        if (model.loci().values().stream()
                .allMatch(locus -> locus.pairs(Sex.FEMALE).equals(locus.pairs(Sex.MALE)))) {
            return new GenotypeSet(model, space.everything());
        }
        List<Condition> sexes = new ArrayList<>();
        for (Sex sex : Sex.values()) {
            Condition one = Condition.where(Sex.VARIABLE, sex.word());
            for (Locus locus : model.loci().values()) {
                one = one.and(locus.id(), texts(locus.pairs(sex)));
            }
            sexes.add(one);
        }
        return new GenotypeSet(model, space.ofDisjoint(sexes));
    }

    private static String[] texts(Collection<AllelePair> pairs) {
        return pairs.stream().map(AllelePair::toString).toArray(String[]::new);
    }

    /**
     * Returns the genotypes that agree with one at every locus that it covers.
     *
     * @param model the model of the genotype
     * @param genotype a genotype of some or all loci
     * @return the set; a single genotype if all loci are covered
     */
    public static GenotypeSet of(Model model, Genotype genotype) {
        GenotypeSet set = all(model);
        for (AllelePair pair : genotype.pairs().values()) {
            set = set.where(pair.locus(), List.of(pair));
        }
        return set;
    }

    /**
     * Returns the genotypes whose expressions lie in a region, for some season and some outcome of draws where it is restricted by them.
     *
     * @param model the model of the region
     * @param region a region of {@link Regions#space()}
     * @return the set
     */
    public static GenotypeSet showing(Model model, BoxSet region) {
        GenotypeSet union = new GenotypeSet(model, model.genotypeSpace().nothing());
        for (Condition box : region.boxes()) {
            union = union.or(all(model).showing(box));
        }
        return union;
    }

    /**
     * Reads genotype text such as {@code C/- B/b}.
     *
     * @param model the model whose symbols are used
     * @param text genotype text
     * @param omitted what it means that a locus is not named
     * @return the genotypes the text allows
     * @throws org.geneticsrules.problem.ProblemsException if the text is not understood, with the place and what was expected
     */
    public static GenotypeSet parse(Model model, String text, OmittedLoci omitted) {
        return GenotypeText.of(model).parse(text, omitted).genotypes();
    }

    /**
     * Returns the model whose genotypes these are.
     *
     * @return the model
     */
    public Model model() {
        return model;
    }

    /**
     * Returns the genotypes of this set that animals of one sex may have.
     *
     * @param sex a sex
     * @return the narrower set; this set where the model does not distinguish sex
     */
    public GenotypeSet of(Sex sex) {
        return ofSexes(Allowed.only(sex.word()));
    }

    private GenotypeSet ofSexes(Allowed sexes) {
        return model.distinguishesSex()
                ? new GenotypeSet(model, boxes.and(model.genotypeSpace().where(Sex.VARIABLE, sexes)))
                : this;
    }

    /**
     * Returns the sexes of animals that may have one of these genotypes.
     *
     * @return both where the model does not distinguish sex; none if the set is empty
     */
    public Set<Sex> sexes() {
        Set<Sex> found = new LinkedHashSet<>();
        for (Sex sex : Sex.values()) {
            if (!of(sex).isEmpty()) {
                found.add(sex);
            }
        }
        return found;
    }

    /**
     * Returns the genotypes of this set that have one of some pairs at a locus.
     *
     * @param locus id of a locus
     * @param pairs pairs of that locus
     * @return the narrower set
     */
    public GenotypeSet where(String locus, Collection<AllelePair> pairs) {
        return new GenotypeSet(model, boxes.and(model.genotypeSpace().where(locus, Allowed.only(texts(pairs)))));
    }

    /**
     * Returns the genotypes of this set whose expressions satisfy a condition.
     *
     * @param expressions allowed expressions by locus, and perhaps allowed sexes as values of {@link Sex#VARIABLE}; what it says of the
     *     season and of draws, which are named by pointers, is no matter of the genotype and passed over
     * @return the narrower set
     */
    public GenotypeSet showing(Condition expressions) {
        GenotypeSet narrower = this;
        for (Map.Entry<String, Allowed> variable : expressions.variables().entrySet()) {
            String name = variable.getKey();
            if (name.equals(Sex.VARIABLE)) {
                narrower = narrower.ofSexes(variable.getValue());
            } else if (!name.startsWith("/") && !name.equals(LifeStage.SEASON)) {
                narrower = narrower.showing(model.locus(name), variable.getValue());
            }
        }
        return narrower;
    }

    private GenotypeSet showing(Locus locus, Allowed expressions) {
        List<AllelePair> inBoth = new ArrayList<>();
        boolean differ = false;
        for (AllelePair pair : locus.pairs()) {
            List<Boolean> allowed = locus.expressions(pair).stream()
                    .map(expressions::allows)
                    .distinct()
                    .toList();
            differ |= allowed.size() > 1;
            if (allowed.contains(true)) {
                inBoth.add(pair);
            }
        }
        return differ
                ? of(Sex.FEMALE)
                        .showingIn(Sex.FEMALE, locus, expressions)
                        .or(of(Sex.MALE).showingIn(Sex.MALE, locus, expressions))
                : where(locus.id(), inBoth);
    }

    private GenotypeSet showingIn(Sex sex, Locus locus, Allowed expressions) {
        return where(
                locus.id(),
                locus.pairs(sex).stream()
                        .filter(pair -> expressions.allows(locus.expression(pair, sex)))
                        .toList());
    }

    /**
     * Returns the genotypes in both sets.
     *
     * @param other a set of the same model
     * @return the intersection
     */
    public GenotypeSet and(GenotypeSet other) {
        return new GenotypeSet(model, boxes.and(other.boxes));
    }

    /**
     * Returns the genotypes in either set.
     *
     * @param other a set of the same model
     * @return the union
     */
    public GenotypeSet or(GenotypeSet other) {
        return new GenotypeSet(model, boxes.or(other.boxes));
    }

    /**
     * Returns the genotypes of this set that are not in the other.
     *
     * @param other a set of the same model
     * @return the difference
     */
    public GenotypeSet minus(GenotypeSet other) {
        return new GenotypeSet(model, boxes.minus(other.boxes));
    }

    /**
     * Tells whether no genotype is left, which means that what is known contradicts itself under the model.
     *
     * @return true if empty
     */
    public boolean isEmpty() {
        return boxes.isEmpty();
    }

    /**
     * Returns the number of genotypes, those of females and of males counted apart where the model distinguishes sex.
     *
     * @return an exact count
     */
    public BigInteger size() {
        return boxes.size();
    }

    /**
     * Tells whether a genotype is allowed to an animal of a sex that can have it.
     *
     * @param genotype a genotype that covers all loci of the model; it need not name loci that animals of its sex lack
     * @return true if it is in the set, with its sex or, where it does not tell the sex, with one of the two
     * @throws IllegalArgumentException if another locus is not covered
     */
    public boolean contains(Genotype genotype) {
        boolean found = false;
        for (Sex sex : genotype.sexes()) {
            found |= contains(genotype, sex);
        }
        return found;
    }

    /**
     * Tells whether a genotype is allowed to an animal of one sex.
     *
     * @param genotype a genotype that covers all loci of the model; it need not name loci that animals of this sex lack
     * @param sex the sex of the animal
     * @return true if it is in the set; false if no animal of this sex can have it
     * @throws IllegalArgumentException if another locus is not covered
     */
    public boolean contains(Genotype genotype, Sex sex) {
        Map<String, String> point = new LinkedHashMap<>();
        if (model.distinguishesSex()) {
            point.put(Sex.VARIABLE, sex.word());
        }
        for (Locus locus : model.loci().values()) {
            Optional<AllelePair> pair = genotype.pair(locus.id());
            if (pair.isEmpty() && locus.transmission().strands(sex) == 0) {
                pair = Optional.of(locus.of());
            }
            point.put(
                    locus.id(),
                    pair.orElseThrow(() -> new IllegalArgumentException(
                                    "the genotype " + genotype + " says nothing about locus " + locus.id()))
                            .toString());
        }
        return boxes.contains(point);
    }

    /**
     * Returns the genotypes box by box, without the sexes.
     *
     * @return boxes, each with the allowed pairs of every locus in model order; disjoint unless the model distinguishes sex, for which
     *     there is {@link #sexedBoxes()}
     */
    public List<Map<String, List<AllelePair>>> boxes() {
        return sexedBoxes().stream().map(Box::pairs).collect(ImmutableList.toImmutableList());
    }

    /**
     * Returns the boxes.
     *
     * @return disjoint boxes; each genotype of a box is possible for each of its sexes
     */
    public List<Box> sexedBoxes() {
        ImmutableList.Builder<Box> all = ImmutableList.builder();
        for (Condition box : boxes.boxes()) {
            Map<String, List<AllelePair>> pairs = new LinkedHashMap<>();
            model.loci().forEach((name, locus) -> pairs.put(name, allowed(locus, box)));
            Allowed sexes = box.variables().getOrDefault(Sex.VARIABLE, Allowed.allBut());
            all.add(new Box(
                    Stream.of(Sex.values())
                            .filter(sex -> sexes.allows(sex.word()))
                            .collect(ImmutableSet.toImmutableSet()),
                    pairs));
        }
        return all.build();
    }

    private static List<AllelePair> allowed(Locus locus, Condition box) {
        Allowed allowed = box.variables().get(locus.id());
        return allowed == null
                ? locus.pairs()
                : locus.pairs().stream()
                        .filter(pair -> allowed.allows(pair.toString()))
                        .collect(ImmutableList.toImmutableList());
    }

    /**
     * Returns the pairs that some allowed genotype has at a locus.
     *
     * @param locus id of a locus
     * @return pairs in declared order
     */
    public List<AllelePair> pairs(String locus) {
        List<AllelePair> found = new ArrayList<>();
        List<Box> all = sexedBoxes();
        for (AllelePair pair : model.locus(locus).pairs()) {
            if (all.stream().anyMatch(box -> box.at(locus).contains(pair))) {
                found.add(pair);
            }
        }
        return ImmutableList.copyOf(found);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof GenotypeSet that && model.equals(that.model) && boxes.equals(that.boxes);
    }

    @Override
    public int hashCode() {
        return boxes.hashCode();
    }

    /** Returns genotype text where the set has one, else its boxes in words. */
    @Override
    public String toString() {
        return GenotypeText.of(model).print(this).orElseGet(boxes::toString);
    }
}
