package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import org.geneticsrules.inference.Member.Candidate;
import org.geneticsrules.inference.Member.Parents;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;

/** Makes the factor graph of a pedigree at some units that have to be looked at together. */
final class KindredGraph {

    private static final double[] HALVES = {0.5, 0.5};

    private final Model model;
    private final Layout layout;
    private final List<Heredity> heredity;
    private final FactorGraph graph = new FactorGraph();

    /** Whether founders are weighed by their populations; else all that can live are alike. */
    private final boolean weighed;

    /** Whether it is counted here that half of the kits are of the sex recorded. */
    private final boolean halves;

    /** For each brood of uncertain sire and unit, what its sire carries. */
    private final Map<Integer, int[]> sires = new LinkedHashMap<>();

    private final Map<List<Object>, double[]> tables;

    /**
     * Makes the graph.
     *
     * @param model the model
     * @param layout the animals and units; they get their variables
     * @param records what is known of each animal, in the same order
     * @param who the animals to look at; with a kit all who may be its parents
     * @param first whether weights that are of no unit are counted here
     * @param even whether as many daughters as sons live, whoever the parents are
     * @param weighed whether founders are weighed by their populations, or all that can live are alike
     * @param tables tables by what they are of, shared by graphs of the same model
     */
    KindredGraph(
            Model model,
            Layout layout,
            List<Evidence> records,
            int[] who,
            boolean first,
            boolean even,
            boolean weighed,
            Map<List<Object>, double[]> tables) {
        this.model = model;
        this.layout = layout;
        this.heredity = layout.heredity();
        this.halves = first && even;
        this.weighed = weighed;
        this.tables = tables;
        for (int i : who) {
            layout.declare(i, graph);
        }
        EvidenceFactors evidence = new EvidenceFactors(layout, graph, first);
        for (int i : who) {
            Optional<Parents> parents = layout.members().all().get(i).parents();
            if (parents.isEmpty()) {
                founder(i);
            } else {
                kit(i, parents.get());
            }
            evidence.add(i, records.get(i));
        }
    }

    FactorGraph graph() {
        return graph;
    }

    private Population population(Member member) {
        String id = member.population()
                .orElseThrow(() -> new IllegalArgumentException("an animal without parents has no population"));
        return Objects.requireNonNull(model.populations().get(id), id);
    }

    private void founder(int member) {
        if (!weighed) {
            unweighed(member);
            return;
        }
        Population population = population(layout.members().all().get(member));
        for (int u = 0; u < heredity.size(); u++) {
            Heredity here = heredity.get(u);
            if (layout.splits(member, u)) {
                graph.add(
                        table(
                                List.of("founder of either sex", here, population.id()),
                                () -> ofEitherSex(
                                        here.founders(Sex.FEMALE, population), here.founders(Sex.MALE, population))),
                        layout.sex(member).orElseThrow(),
                        layout.carried(member, u));
            } else {
                Sex sex = layout.sexOf(member, 0);
                graph.add(
                        table(List.of("founder", here, sex, population.id()), () -> here.founders(sex, population)),
                        layout.carried(member, u));
            }
        }
        if (layout.sex(member).isPresent()) {
            double females = 1;
            double males = 1;
            for (Heredity here : heredity) {
                females *= here.founderShare(Sex.FEMALE, population);
                males *= here.founderShare(Sex.MALE, population);
            }
            double total = females + males;
            graph.add(
                    new double[] {females / total, males / total},
                    layout.sex(member).orElseThrow());
        }
    }

    private void unweighed(int member) {
        for (int u = 0; u < heredity.size(); u++) {
            Heredity here = heredity.get(u);
            if (layout.splits(member, u)) {
                graph.add(
                        table(
                                List.of("living of either sex", here),
                                () -> ofEitherSex(here.living(Sex.FEMALE), here.living(Sex.MALE))),
                        layout.sex(member).orElseThrow(),
                        layout.carried(member, u));
            } else {
                Sex sex = layout.sexOf(member, 0);
                graph.add(table(List.of("living", here, sex), () -> here.living(sex)), layout.carried(member, u));
            }
        }
    }

    private static double[] ofEitherSex(double[] females, double[] males) {
        int width = females.length + males.length;
        double[] table = new double[2 * width];
        System.arraycopy(females, 0, table, 0, females.length);
        System.arraycopy(males, 0, table, width + females.length, males.length);
        return table;
    }

    private double[] table(List<Object> key, Supplier<double[]> make) {
        return tables.computeIfAbsent(key, ignored -> make.get());
    }

    private void kit(int member, Parents parents) {
        for (int u = 0; u < heredity.size(); u++) {
            int sire = sire(parents, u);
            int dam = layout.carried(parents.dam(), u);
            Heredity here = heredity.get(u);
            if (layout.splits(member, u)) {
                graph.add(
                        table(List.of("kit of either sex", here), () -> ofEitherSex(here)),
                        sire,
                        dam,
                        layout.sex(member).orElseThrow(),
                        layout.carried(member, u));
            } else {
                Sex sex = layout.sexOf(member, 0);
                graph.add(table(List.of("kit", here, sex), () -> here.kits(sex)), sire, dam, layout.carried(member, u));
            }
        }
        sexOfKit(member, parents);
        fertile(parents);
    }

    private static double[] ofEitherSex(Heredity here) {
        int females = here.states(Sex.FEMALE);
        int males = here.states(Sex.MALE);
        double[] daughters = here.kits(Sex.FEMALE);
        double[] sons = here.kits(Sex.MALE);
        int pairs = daughters.length / females;
        int width = females + males;
        double[] table = new double[pairs * 2 * width];
        for (int pair = 0; pair < pairs; pair++) {
            System.arraycopy(daughters, pair * females, table, 2 * pair * width, females);
            System.arraycopy(sons, pair * males, table, (2 * pair + 1) * width + females, males);
        }
        return table;
    }

    /** What the sire of a kit carries at a unit; where it is uncertain who he is, a variable that is equal to that of the one chosen. */
    private int sire(Parents parents, int unit) {
        if (parents.isCertain()) {
            return layout.carried(parents.sires().get(0).male(), unit);
        }
        int[] ofBrood = sires.computeIfAbsent(parents.brood(), brood -> {
            layout.choose(brood, parents.sires().size(), graph);
            graph.add(
                    parents.sires().stream().mapToDouble(Candidate::share).toArray(),
                    layout.choice(brood).orElseThrow());
            int[] none = new int[heredity.size()];
            Arrays.fill(none, -1);
            return none;
        });
        if (ofBrood[unit] < 0) {
            int states = heredity.get(unit).states(Sex.MALE);
            int males = parents.sires().size();
            ofBrood[unit] = graph.variable(states);
            for (int c = 0; c < males; c++) {
                int candidate = c;
                graph.add(
                        table(List.of("sire", states, males, c), () -> equal(states, males, candidate)),
                        layout.choice(parents.brood()).orElseThrow(),
                        layout.carried(parents.sires().get(c).male(), unit),
                        ofBrood[unit]);
            }
        }
        return ofBrood[unit];
    }

    /** By choice, state of a candidate and state of the sire: whether the two are the same if the candidate was chosen. */
    private static double[] equal(int states, int males, int candidate) {
        double[] table = new double[males * states * states];
        for (int cell = 0; cell < table.length; cell++) {
            int choice = cell / (states * states);
            boolean same = cell / states % states == cell % states;
            table[cell] = choice != candidate || same ? 1 : 0;
        }
        return table;
    }

    /** A daughter or a son: as many of one as of the other, but for those that die; so the sex of a kit may tell of its parents. */
    private void sexOfKit(int member, Parents parents) {
        List<Integer> differing = new ArrayList<>();
        for (int u = 0; u < heredity.size(); u++) {
            if (heredity.get(u).livingDependsOnSex()) {
                differing.add(u);
            }
        }
        boolean open = layout.sex(member).isPresent();
        if (differing.isEmpty()) {
            if (open) {
                graph.add(HALVES, layout.sex(member).orElseThrow());
            } else if (halves && layout.members().all().get(member).sex().isPresent()) {
                int states = layout.states(member, 0);
                graph.add(
                        table(List.of("half", states), () -> EvidenceFactors.constant(states, 0.5)),
                        layout.carried(member, 0));
            }
            return;
        }
        if (!open && layout.members().all().get(member).sex().isEmpty()) {
            return;
        }
        int[] variables = new int[2 * differing.size() + (open ? 1 : 0)];
        for (int i = 0; i < differing.size(); i++) {
            variables[2 * i] = sire(parents, differing.get(i));
            variables[2 * i + 1] = layout.carried(parents.dam(), differing.get(i));
        }
        if (open) {
            variables[variables.length - 1] = layout.sex(member).orElseThrow();
        }
        Sex sex = layout.sexOf(member, 0);
        List<Heredity> of = differing.stream().map(heredity::get).toList();
        graph.add(table(List.of("sex", open ? "open" : sex.word(), of), () -> sexes(differing, open, sex)), variables);
    }

    private double[] sexes(List<Integer> differing, boolean open, Sex sex) {
        double[] daughters = {1};
        double[] sons = {1};
        for (int u : differing) {
            daughters = times(daughters, heredity.get(u).livingShare(Sex.FEMALE));
            sons = times(sons, heredity.get(u).livingShare(Sex.MALE));
        }
        double[] table = new double[daughters.length * (open ? 2 : 1)];
        for (int pair = 0; pair < daughters.length; pair++) {
            double total = daughters[pair] + sons[pair];
            double daughter = total == 0 ? 0 : daughters[pair] / total;
            double son = total == 0 ? 0 : sons[pair] / total;
            if (open) {
                table[2 * pair] = daughter;
                table[2 * pair + 1] = son;
            } else {
                table[pair] = sex == Sex.FEMALE ? daughter : son;
            }
        }
        return table;
    }

    private static double[] times(double[] a, double[] b) {
        double[] product = new double[a.length * b.length];
        for (int i = 0; i < product.length; i++) {
            product[i] = a[i / b.length] * b[i % b.length];
        }
        return product;
    }

    /**
     * Where each kit may have a sire of its own, the share of a male who has no kits with the dam goes to the others: a kit says nothing
     * of how many of the males could have sired it.
     */
    private void fertile(Parents parents) {
        if (!parents.perKit() || parents.isCertain()) {
            return;
        }
        List<Integer> losing = new ArrayList<>();
        for (int u = 0; u < heredity.size(); u++) {
            if (heredity.get(u).mayLoseAll()) {
                losing.add(u);
            }
        }
        if (losing.isEmpty()) {
            return;
        }
        int males = parents.sires().size();
        int[] variables = new int[(males + 1) * losing.size()];
        int[] sizes = new int[variables.length];
        for (int i = 0; i < losing.size(); i++) {
            for (int c = 0; c <= males; c++) {
                int member = c == males ? parents.dam() : parents.sires().get(c).male();
                variables[i * (males + 1) + c] = layout.carried(member, losing.get(i));
                sizes[i * (males + 1) + c] = layout.states(member, losing.get(i));
            }
        }
        double cells = 1;
        for (int size : sizes) {
            cells *= size;
        }
        if (cells > EvidenceFactors.MOST_CELLS) {
            throw new TooLargeException(
                    "combinations of what the parents of one kit carry where kits die",
                    cells,
                    EvidenceFactors.MOST_CELLS,
                    "name fewer males who may have sired each kit.");
        }
        double[] table = new double[(int) cells];
        int[] at = new int[sizes.length];
        for (int cell = 0; cell < table.length; cell++) {
            int rest = cell;
            for (int axis = sizes.length - 1; axis >= 0; axis--) {
                at[axis] = rest % sizes[axis];
                rest /= sizes[axis];
            }
            double fertile = 0;
            for (int c = 0; c < males; c++) {
                fertile +=
                        haveKits(losing, at, c, males) ? parents.sires().get(c).share() : 0;
            }
            table[cell] = fertile == 0 ? 0 : 1 / fertile;
        }
        graph.add(table, variables);
    }

    private boolean haveKits(List<Integer> losing, int[] at, int candidate, int males) {
        boolean any = false;
        for (Sex sex : Layout.SEXES) {
            boolean lives = true;
            for (int i = 0; i < losing.size(); i++) {
                Heredity here = heredity.get(losing.get(i));
                int sire = at[i * (males + 1) + candidate];
                int dam = at[i * (males + 1) + males];
                lives &= here.livingShare(sex)[sire * here.states(Sex.FEMALE) + dam] > 0;
            }
            any |= lives;
        }
        return any;
    }
}
