package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;

/**
 * Which genotypes the animals of a pedigree can have at one locus.
 *
 * <p>This rests on the model, the recorded relations and records, by what is impossible alone: frequencies are left out, so it does not
 * matter how rare an allele is, and mutation too unless it was asked for ({@link Inference#withMutation}). Where nothing is undecided, a
 * genotype is possible if and only if it has a chance above 0 under frequencies that are all above 0.
 *
 * <p>What genotype elimination strikes out is excluded at once. For the rest one way is looked for in which everything fits, with the
 * genotype that is asked about.
 *
 * <p>Immutable and thread-safe.
 */
public final class Possibilities {

    private final Pedigree pedigree;
    private final Locus locus;
    private final Members members;
    private final Layout layout;
    private final Whose whose;
    private final Effort effort;

    /** Where the locus stands among the units, and among those of its unit. */
    private final int unit;

    private final int place;

    private final List<Ground> grounds = new ArrayList<>();

    /** For each variable, its part, and its number there. */
    private final int[] part;

    private final int[] inPart;

    /** A part of the graph, and one way in which all of it fits, if there is one. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Ground(Components.Part part, Elimination elimination, Fit fit, Optional<int[]> witness) {}

    /**
     * Prepares the question.
     *
     * @param pedigree the animals
     * @param locus the locus
     * @param members the animals, numbered
     * @param question the loci that have to be followed
     * @param effort how much may be done
     */
    Possibilities(Pedigree pedigree, Locus locus, Members members, Groups question, Effort effort) {
        this.pedigree = pedigree;
        this.locus = locus;
        this.members = members;
        this.effort = effort;
        int group = 0;
        while (!loci(question.layout(group)).contains(locus)) {
            group++;
        }
        this.layout = question.layout(group);
        FactorGraph graph = question.graph(group, layout);
        this.whose = new Whose(layout, graph.size());
        int at = 0;
        while (!layout.loci(at).contains(locus)) {
            at++;
        }
        this.unit = at;
        this.place = layout.loci(at).indexOf(locus);
        this.part = new int[graph.size()];
        this.inPart = new int[graph.size()];
        for (Components.Part one : Components.of(graph)) {
            for (int v = 0; v < one.variables().length; v++) {
                part[one.variables()[v]] = grounds.size();
                inPart[one.variables()[v]] = v;
            }
            grounds.add(ground(one, struckOut(one.graph())));
        }
    }

    private static List<Locus> loci(Layout layout) {
        List<Locus> all = new ArrayList<>();
        for (int u = 0; u < layout.heredity().size(); u++) {
            all.addAll(layout.loci(u));
        }
        return all;
    }

    private Elimination struckOut(FactorGraph graph) {
        return Elimination.of(graph, (variable, factor) -> effort.watch().run());
    }

    private Ground ground(Components.Part one, Elimination elimination) {
        if (elimination.emptied() >= 0) {
            return new Ground(one, elimination, Fit.CONTRADICTS, Optional.empty());
        }
        Realisation found = Realisation.of(one.graph(), elimination, effort.cells(), effort.watch());
        return new Ground(
                one,
                elimination,
                found.fit(),
                found.fit() == Fit.FITS ? Optional.of(found.witness()) : Optional.empty());
    }

    /**
     * Returns the genotypes that an animal of this sex can have at all, each with whether this animal can have it.
     *
     * @param individual id of an animal
     * @return by genotype, in the order of the model
     * @throws IllegalArgumentException if there is no such animal
     */
    public Map<AllelePair, Possibility> of(String individual) {
        pedigree.individual(individual);
        int member = members.number(individual);
        Map<AllelePair, Possibility> all = new LinkedHashMap<>();
        for (int state = 0; state < layout.states(member, unit); state++) {
            AllelePair pair = layout.pair(member, unit, state, place);
            if (!all.containsKey(pair)) {
                all.put(pair, possibility(member, pair));
            }
        }
        return all;
    }

    /**
     * Tells whether an animal can have a genotype.
     *
     * @param individual id of an animal
     * @param pair a genotype of the locus
     * @return excluded, possible with a witness, undecided, or contradicted
     * @throws IllegalArgumentException if there is no such animal, or the genotype is of another locus
     */
    public Possibility of(String individual, AllelePair pair) {
        pedigree.individual(individual);
        if (!pair.locus().equals(locus.id())) {
            throw new IllegalArgumentException(pair + " is a genotype of locus " + pair.locus() + ", but locus "
                    + locus.id() + " was asked about");
        }
        return possibility(members.number(individual), pair);
    }

    private Possibility possibility(int member, AllelePair pair) {
        int variable = layout.carried(member, unit);
        Ground ground = grounds.get(part[variable]);
        if (ground.fit() == Fit.CONTRADICTS) {
            return new Possibility.Contradicted();
        }
        int v = inPart[variable];
        double[] asked = new double[layout.states(member, unit)];
        boolean[] left = ground.elimination().flags(v);
        boolean any = false;
        for (int state = 0; state < asked.length; state++) {
            if (layout.pair(member, unit, state, place).equals(pair)) {
                asked[state] = 1;
                any |= left[state];
            }
        }
        if (!any) {
            return new Possibility.Excluded();
        }
        if (ground.witness().isPresent() && asked[ground.witness().get()[v]] > 0) {
            return possible(ground, ground.witness().get());
        }
        FactorGraph graph = new FactorGraph();
        Arrays.stream(ground.part().graph().sizes()).forEach(graph::variable);
        ground.part().graph().factors().forEach(graph::add);
        graph.add(asked, v);
        Elimination elimination = struckOut(graph);
        if (elimination.emptied() >= 0) {
            return new Possibility.Excluded();
        }
        Realisation found = Realisation.of(graph, elimination, effort.cells(), effort.watch());
        return switch (found.fit()) {
            case FITS -> possible(ground, found.witness());
            case CONTRADICTS -> new Possibility.Excluded();
            case UNDECIDED -> new Possibility.Undecided(found.cells());
        };
    }

    private Possibility possible(Ground ground, int[] states) {
        Map<String, Map<String, AllelePair>> witness = new LinkedHashMap<>();
        for (int v = 0; v < states.length; v++) {
            int variable = ground.part().variables()[v];
            int u = whose.unit(variable);
            Optional<String> id = whose.member(variable) < 0
                    ? Optional.empty()
                    : members.all().get(whose.member(variable)).recorded().map(Individual::id);
            if (u >= 0 && id.isPresent()) {
                Map<String, AllelePair> pairs = witness.computeIfAbsent(id.get(), key -> new LinkedHashMap<>());
                List<Locus> loci = layout.loci(u);
                for (int l = 0; l < loci.size(); l++) {
                    pairs.put(loci.get(l).id(), layout.pair(whose.member(variable), u, states[v], l));
                }
            }
        }
        return new Possibility.Possible(witness);
    }
}
