package org.geneticsrules.inference;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
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
        /** Not calculated: it would take more room than allowed. */
        TOO_LARGE,
        /** The records that bear on it contradict one another under the model. */
        CONTRADICTED
    }

    private final Pedigree pedigree;
    private final KindredGraph kindred;
    private final List<Notice> notices;

    /** For each variable, its part. */
    private final int[] part;

    private final Standing[] standings;
    private final double[] cells;
    private final double[][] chances;
    private final boolean[][] left;
    private final Map<double[], SparseTable> tables = Peeling.tables();
    private double logLikelihood;

    private Conclusions(Pedigree pedigree, KindredGraph kindred, double budget, List<Notice> notices) {
        this.pedigree = pedigree;
        this.kindred = kindred;
        this.notices = ImmutableList.copyOf(notices);
        int variables = kindred.graph().size();
        this.part = new int[variables];
        this.chances = new double[variables][0];
        this.left = new boolean[variables][];
        List<Components.Part> parts = Components.of(kindred.graph());
        this.standings = new Standing[parts.size()];
        this.cells = new double[parts.size()];
        for (int p = 0; p < parts.size(); p++) {
            settle(p, parts.get(p), budget);
        }
    }

    static Conclusions of(Pedigree pedigree, KindredGraph kindred, double budget, List<Notice> notices) {
        return new Conclusions(pedigree, kindred, budget, notices);
    }

    private void settle(int number, Components.Part one, double budget) {
        Elimination elimination = Elimination.of(one.graph());
        for (int v = 0; v < one.variables().length; v++) {
            int whole = one.variables()[v];
            part[whole] = number;
            left[whole] = elimination.flags(v);
        }
        if (elimination.emptied() >= 0) {
            standings[number] = Standing.CONTRADICTED;
            logLikelihood = Double.NEGATIVE_INFINITY;
            return;
        }
        Optional<Posteriors> exactly = exactly(number, one.graph(), elimination, budget);
        if (exactly.isEmpty()) {
            standings[number] = Standing.TOO_LARGE;
            return;
        }
        Posteriors found = exactly.get();
        standings[number] = found.isPossible() ? Standing.EXACT : Standing.CONTRADICTED;
        logLikelihood += found.logLikelihood();
        for (int v = 0; v < one.variables().length; v++) {
            chances[one.variables()[v]] = found.chances()[v];
        }
    }

    private Optional<Posteriors> exactly(int number, FactorGraph graph, Elimination elimination, double budget) {
        Optional<Peeling> peeling = Peeling.of(graph, tables);
        if (peeling.isPresent()) {
            cells[number] = peeling.get().cells();
            return peeling.filter(one -> one.cells() <= budget).map(Peeling::propagate);
        }
        CliqueTree tree = CliqueTree.of(graph, elimination, budget);
        cells[number] = tree.cells();
        return tree.cells() <= budget ? Optional.of(tree.propagate()) : Optional.empty();
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
     * @return the natural logarithm, over all parts that were calculated; negative infinity if records contradict one another
     */
    public double logLikelihood() {
        return logLikelihood;
    }

    /**
     * Tells whether no records were found to contradict one another.
     *
     * @return false if some do; true where all is calculated, or as far as it is
     */
    public boolean isConsistent() {
        for (Standing standing : standings) {
            if (standing == Standing.CONTRADICTED) {
                return false;
            }
        }
        return true;
    }

    /**
     * Returns the animals whose records are part of a contradiction at some locus, or are related to it through others.
     *
     * @return ids in the order of the pedigree; none if the records are consistent
     */
    public Set<String> contradicted() {
        ImmutableSet.Builder<String> ids = ImmutableSet.builder();
        for (String id : pedigree.individuals().keySet()) {
            int member = kindred.members().number(id);
            for (int u = 0; u < kindred.units().size(); u++) {
                if (standings[part[kindred.carried(member, u)]] == Standing.CONTRADICTED) {
                    ids.add(id);
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
     * @return exact, too large or contradicted
     * @throws IllegalArgumentException if there is no such animal, or the locus was not asked for
     */
    public Standing standing(String individual, String locus) {
        return standings[part[kindred.carried(member(individual), place(locus).unit())]];
    }

    /**
     * Returns what an animal carries at a locus, weighed by all records.
     *
     * @param individual id of an animal
     * @param locus id of a locus that was asked for
     * @return the chances of its genotypes; empty if they are not settled exactly
     * @throws IllegalArgumentException if there is no such animal, or the locus was not asked for
     */
    public Optional<Posterior> at(String individual, String locus) {
        int member = member(individual);
        Place place = place(locus);
        double[] found = chances[kindred.carried(member, place.unit())];
        if (standing(individual, locus) != Standing.EXACT) {
            return Optional.empty();
        }
        Map<AllelePair, Double> sums = new LinkedHashMap<>();
        for (int state = 0; state < found.length; state++) {
            sums.merge(kindred.pair(member, place.unit(), state, place.locus()), found[state], Double::sum);
        }
        return Optional.of(new Posterior(individual, locus, sums));
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
        boolean[] may = left[kindred.carried(member, place.unit())];
        Map<AllelePair, Boolean> any = new LinkedHashMap<>();
        for (int state = 0; state < may.length; state++) {
            any.merge(kindred.pair(member, place.unit(), state, place.locus()), may[state], Boolean::logicalOr);
        }
        return any.entrySet().stream()
                .filter(one -> !one.getValue())
                .map(Map.Entry::getKey)
                .collect(ImmutableSet.toImmutableSet());
    }

    /**
     * Returns the chance that an animal is female.
     *
     * @param individual id of an animal
     * @return 0 or 1 where its sex is recorded or follows from being a parent; 1/2 where nothing depends on it; empty if it is not settled
     * @throws IllegalArgumentException if there is no such animal
     */
    public Optional<Double> female(String individual) {
        int member = member(individual);
        Optional<Sex> known = kindred.members().all().get(member).sex();
        if (known.isPresent()) {
            return Optional.of(known.get() == Sex.FEMALE ? 1.0 : 0.0);
        }
        if (kindred.sex(member).isEmpty()) {
            return Optional.of(0.5);
        }
        int variable = kindred.sex(member).getAsInt();
        return standings[part[variable]] == Standing.EXACT ? Optional.of(chances[variable][0]) : Optional.empty();
    }

    /**
     * Returns how likely each candidate is to have sired an animal.
     *
     * @param individual id of an animal
     * @return by id, males that are not recorded under the empty text; one male of chance 1 where he is certain; empty for a founder and
     *     where it is not settled
     * @throws IllegalArgumentException if there is no such animal
     */
    public Map<String, Double> sires(String individual) {
        Member member = kindred.members().all().get(member(individual));
        Map<String, Double> found = new LinkedHashMap<>();
        if (member.parents().isEmpty()) {
            return found;
        }
        Parents parents = member.parents().get();
        double[] choice = {1};
        if (kindred.choice(parents.brood()).isPresent()) {
            int variable = kindred.choice(parents.brood()).getAsInt();
            if (standings[part[variable]] != Standing.EXACT) {
                return found;
            }
            choice = chances[variable];
        }
        for (int c = 0; c < choice.length; c++) {
            String id = kindred.members()
                    .all()
                    .get(parents.sires().get(c).male())
                    .recorded()
                    .map(Individual::id)
                    .orElse("");
            found.merge(id, choice[c], Double::sum);
        }
        return found;
    }

    private int member(String individual) {
        pedigree.individual(individual); // names the nearest if there is none
        return kindred.members().number(individual);
    }

    private record Place(int unit, int locus) {}

    private Place place(String id) {
        List<String> known = new ArrayList<>();
        for (int u = 0; u < kindred.units().size(); u++) {
            List<Locus> loci = kindred.units().get(u).loci();
            for (int l = 0; l < loci.size(); l++) {
                if (loci.get(l).id().equals(id)) {
                    return new Place(u, l);
                }
                known.add(loci.get(l).id());
            }
        }
        throw new IllegalArgumentException("locus " + id + " was not asked for; asked were " + known);
    }
}
