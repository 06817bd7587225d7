package org.geneticsrules.inference;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import org.geneticsrules.inference.Member.Parents;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.Sex;

/**
 * What the records of a pedigree say of its animals, number by number.
 *
 * <p>Immutable and thread-safe.
 */
public final class Conclusions {

    /** How far a number is settled. */
    public enum Standing {
        /** Calculated exactly, but for rounding. */
        EXACT,
        /** Estimated by sampling, with a standard error that is small enough ({@link Sampling#mostStandardError}). */
        SAMPLED,
        /**
         * Not given: sampling came to its limits before the number was sure enough, or its chains could not be shown to reach all that is
         * possible.
         */
        NOT_CONVERGED,
        /**
         * Not calculated: it would take more room than allowed, and sampling was not asked for ({@link Inference#sampling}); or hundreds of
         * records speak against what others demand, so that chances lie beyond the range of numbers.
         */
        TOO_LARGE,
        /** Not calculated: it was not come to within the time that was given. Only registries have such a time. */
        NOT_IN_TIME,
        /** The records that bear on it contradict one another under the model. */
        CONTRADICTED;

        /** Whether there is a number. */
        boolean isKnown() {
            return this == EXACT || this == SAMPLED;
        }
    }

    private final Pedigree pedigree;
    private final Members members;
    private final List<Settled> groups;

    /** Whether all is looked at that records speak of. */
    private final boolean whole;

    private final Map<String, Place> places = new LinkedHashMap<>();
    private final List<Notice> notices;

    Conclusions(Pedigree pedigree, Members members, Groups question, Effort allowed, List<Notice> notices) {
        Effort effort = allowed.asked();
        this.pedigree = pedigree;
        this.members = members;
        this.notices = ImmutableList.copyOf(notices);
        Families families = Families.of(members, question.kinds());
        IntStream numbers = IntStream.range(0, question.count());
        this.whole = question.isWhole();
        this.groups = (effort.parallel() ? numbers.parallel() : numbers)
                .mapToObj(g -> new Settled(question, g, families, effort))
                .toList();
        groups.forEach(this::place);
    }

    /**
     * Returns what should be known of the records.
     *
     * @return records that are no evidence, or only under an assumption
     */
    public List<Notice> notices() {
        return notices;
    }

    /**
     * Returns the logarithm of the chance of all that was recorded, given the pedigree and the sexes of founders.
     *
     * @return the natural logarithm, over all parts that were calculated exactly: those that were sampled have none; negative infinity if
     *     records contradict one another
     */
    public double logLikelihood() {
        return groups.stream().mapToDouble(Settled::logLikelihood).sum();
    }

    /**
     * Tells whether all was calculated exactly, so that {@link #logLikelihood} leaves no record out.
     *
     * @return false if a part was sampled, or not calculated at all
     */
    public boolean isExact() {
        for (int member = 0; member < members.all().size(); member++) {
            for (Settled group : groups) {
                for (int u = 0; u < group.layout().heredity().size(); u++) {
                    Standing standing = group.standing(member, u);
                    if (standing != Standing.EXACT && standing != Standing.CONTRADICTED) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    /**
     * Tells whether no records were found to contradict one another.
     *
     * @return false if some do; true where all is calculated, or as far as it is
     */
    public boolean isConsistent() {
        return groups.stream().noneMatch(Settled::isContradicted);
    }

    /**
     * Returns the animals whose records are part of a contradiction at some locus, or are related to it through others.
     *
     * @return ids in the order of the pedigree; none if the records are consistent
     */
    public Set<String> contradicted() {
        ImmutableSet.Builder<String> ids = ImmutableSet.builder();
        for (String id : pedigree.individuals().keySet()) {
            int member = members.number(id);
            for (Settled group : groups) {
                for (int u = 0; u < group.layout().heredity().size(); u++) {
                    if (group.standing(member, u) == Standing.CONTRADICTED) {
                        ids.add(id);
                    }
                }
            }
        }
        return ids.build();
    }

    /**
     * Tells how far what an animal carries at a locus is settled.
     *
     * @param individual id of an animal
     * @param locus id of a locus that was asked for
     * @return exact, sampled, not converged, too large or contradicted
     * @throws IllegalArgumentException if there is no such animal, or the locus was not asked for
     */
    public Standing standing(String individual, String locus) {
        Place place = place(locus);
        return place.group().standing(member(individual), place.unit());
    }

    /**
     * Returns what an animal carries at a locus, weighed by all records.
     *
     * @param individual id of an animal
     * @param locus id of a locus that was asked for
     * @return the chances of its genotypes, with their standard errors if they are sampled; empty if they are neither exact nor sampled
     * @throws IllegalArgumentException if there is no such animal, or the locus was not asked for
     */
    public Optional<Posterior> at(String individual, String locus) {
        int member = member(individual);
        Place place = place(locus);
        if (!place.group().standing(member, place.unit()).isKnown()) {
            return Optional.empty();
        }
        return Optional.of(new Posterior(
                individual,
                locus,
                sums(place, member, place.group().chances(member, place.unit())),
                sums(place, member, place.group().errors(member, place.unit()))));
    }

    /** By genotype at one locus, the sums over the states with it. */
    private static Map<AllelePair, Double> sums(Place place, int member, double[] ofStates) {
        Map<AllelePair, Double> sums = new LinkedHashMap<>();
        for (int state = 0; state < ofStates.length; state++) {
            sums.merge(place.pair(member, state), ofStates[state], Double::sum);
        }
        return sums;
    }

    /**
     * Returns the genotypes of a locus that an animal cannot have, by what is struck out one animal after another. Where relations form
     * loops there may be more.
     *
     * @param individual id of an animal
     * @param locus id of a locus that was asked for
     * @return genotypes that some record, or relatives together, rule out
     * @throws IllegalArgumentException if there is no such animal, or the locus was not asked for
     */
    public Set<AllelePair> excluded(String individual, String locus) {
        int member = member(individual);
        Place place = place(locus);
        boolean[] may = place.group().left(member, place.unit());
        Map<AllelePair, Boolean> any = new LinkedHashMap<>();
        for (int state = 0; state < may.length; state++) {
            any.merge(place.pair(member, state), may[state], Boolean::logicalOr);
        }
        return any.entrySet().stream()
                .filter(one -> !one.getValue())
                .map(Map.Entry::getKey)
                .collect(ImmutableSet.toImmutableSet());
    }

    /**
     * Tells whether the phase of two linked loci is open in an animal: by all records it may have the same alleles on its two chromosomes in
     * either of two ways.
     *
     * @param individual id of an animal
     * @param first id of a locus that was asked for
     * @param second id of another one
     * @return false if its phase is known, if it cannot be heterozygous at both, if the loci are not followed together, and if its chances are
     *     not known
     * @throws IllegalArgumentException if there is no such animal, or a locus was not asked for
     */
    public boolean isPhaseOpen(String individual, String first, String second) {
        int member = member(individual);
        Place one = place(first);
        Place other = place(second);
        if (one.group() != other.group()
                || one.unit() != other.unit()
                || !one.group().standing(member, one.unit()).isKnown()) {
            return false;
        }
        double[] chances = one.group().chances(member, one.unit());
        Map<List<AllelePair>, List<Integer>> ways = new LinkedHashMap<>();
        for (int state = 0; state < chances.length; state++) {
            if (chances[state] > 0) {
                List<Integer> way = IntStream.of(
                                one.group().layout().strands(member, one.unit(), state, one.locus(), other.locus()))
                        .boxed()
                        .toList();
                List<AllelePair> pairs = List.of(one.pair(member, state), other.pair(member, state));
                if (!way.equals(ways.merge(pairs, way, (before, now) -> before))) {
                    return true;
                }
            }
        }
        return false;
    }

    /**
     * Returns the chance that an animal is female.
     *
     * @param individual id of an animal
     * @return 0 or 1 where its sex is recorded or follows from being a parent; 1/2 where nothing depends on it; empty if it is
     *     neither exact nor sampled, and if it may depend on loci that were not asked about ({@link Inference#concludeOnly})
     * @throws IllegalArgumentException if there is no such animal
     */
    public Optional<Double> female(String individual) {
        int member = member(individual);
        Optional<Sex> known = members.all().get(member).sex();
        if (known.isPresent()) {
            return Optional.of(known.get() == Sex.FEMALE ? 1.0 : 0.0);
        }
        for (Settled group : groups) {
            OptionalInt variable = group.layout().sex(member);
            if (variable.isPresent()) {
                return group.standing(variable.getAsInt()).isKnown()
                        ? Optional.of(group.chances(variable.getAsInt())[0])
                        : Optional.empty();
            }
        }
        return whole ? Optional.of(0.5) : Optional.empty();
    }

    /**
     * Returns how likely each candidate is to have sired an animal.
     *
     * @param individual id of an animal
     * @return by id, males that are not recorded under the empty text; one male of chance 1 where he is certain; empty for a founder and
     *     where it is neither exact nor sampled
     * @throws IllegalArgumentException if there is no such animal
     */
    public Map<String, Double> sires(String individual) {
        Map<String, Double> found = new LinkedHashMap<>();
        Optional<Parents> parents = members.all().get(member(individual)).parents();
        if (parents.isEmpty()) {
            return found;
        }
        double[] choice = {1};
        for (Settled group : groups) {
            OptionalInt variable = group.layout().choice(parents.get().brood());
            if (variable.isPresent()) {
                if (!group.standing(variable.getAsInt()).isKnown()) {
                    return found;
                }
                choice = group.chances(variable.getAsInt());
            }
        }
        for (int c = 0; c < choice.length; c++) {
            int male = parents.get().sires().get(c).male();
            found.merge(members.all().get(male).recorded().map(Individual::id).orElse(""), choice[c], Double::sum);
        }
        return found;
    }

    private int member(String individual) {
        pedigree.individual(individual); // names the nearest if there is none
        return members.number(individual);
    }

    /** Where a locus is looked at. */
    private record Place(Settled group, int unit, int locus) {
        AllelePair pair(int member, int state) {
            return group.layout().pair(member, unit, state, locus);
        }
    }

    private Place place(String id) {
        Place found = places.get(id);
        if (found == null) {
            throw new IllegalArgumentException("locus " + id + " was not asked for; asked were " + places.keySet());
        }
        return found;
    }

    private void place(Settled group) {
        for (int u = 0; u < group.layout().heredity().size(); u++) {
            List<Locus> loci = group.layout().loci(u);
            for (int l = 0; l < loci.size(); l++) {
                places.put(loci.get(l).id(), new Place(group, u, l));
            }
        }
    }
}
