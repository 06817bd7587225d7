package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Supplier;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Member.Parents;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.model.Viability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;

/**
 * The factor graph of a pedigree: what each animal carries at each unit, the sex where it is not known, and which male sired a brood.
 *
 * <p>An animal of unknown sex has, at units where the sexes differ, the states of females first and those of males after them.
 */
final class KindredGraph {

    private static final List<Sex> SEXES = List.of(Sex.FEMALE, Sex.MALE);

    private final Model model;
    private final Members members;
    private final List<Unit> units;
    private final List<Heredity> heredity = new ArrayList<>();
    private final FactorGraph graph = new FactorGraph();

    /** For each animal and unit, the number of its variable. */
    private final int[][] carried;

    private final OptionalInt[] sexes;
    private final Map<Integer, Integer> choices = new LinkedHashMap<>();

    /** For each brood of uncertain sire and unit, what its sire carries. */
    private final Map<Integer, int[]> sires = new LinkedHashMap<>();

    private final Map<List<Object>, double[]> tables = new LinkedHashMap<>();

    private final boolean weighted;

    /**
     * Builds the graph.
     *
     * @param compiled the model
     * @param members the animals
     * @param records what is known of each animal, in the same order
     * @param matter the loci that matter
     * @param weighted whether states are weighed, with mutation, or each that may be has weight 1, without
     */
    KindredGraph(
            CompiledModel compiled, Members members, List<Evidence> records, Set<String> matter, boolean weighted) {
        this.model = compiled.model();
        this.members = members;
        this.weighted = weighted;
        this.units = Unit.of(model, matter);
        units.forEach(unit -> heredity.add(Heredity.of(model, unit, weighted)));
        int count = members.all().size();
        this.carried = new int[count][units.size()];
        this.sexes = new OptionalInt[count];
        for (int i = 0; i < count; i++) {
            declare(i, records.get(i));
        }
        for (int i = 0; i < count; i++) {
            if (members.all().get(i).isFounder()) {
                founder(i);
            } else {
                kit(i);
            }
            new EvidenceFactors(this, i, weighted).add(records.get(i));
        }
    }

    /** The loci that have to be followed: those asked for, those that records read, and those at which animals die. */
    static Set<String> mattering(Model model, List<Evidence> records, Set<String> asked) {
        Set<String> matter = new LinkedHashSet<>(asked);
        records.forEach(one -> matter.addAll(one.loci()));
        for (Viability one : model.viability().values()) {
            matter.add(one.locus());
        }
        return matter;
    }

    FactorGraph graph() {
        return graph;
    }

    Members members() {
        return members;
    }

    List<Unit> units() {
        return units;
    }

    Heredity heredity(int unit) {
        return heredity.get(unit);
    }

    /** The variable of what an animal carries at a unit. */
    int carried(int member, int unit) {
        return carried[member][unit];
    }

    /** The variable of an animal's sex, female before male, if it is not known and makes a difference. */
    OptionalInt sex(int member) {
        return sexes[member];
    }

    /** The variable of which candidate sired a brood, if that is uncertain. */
    OptionalInt choice(int brood) {
        Integer choice = choices.get(brood);
        return choice == null ? OptionalInt.empty() : OptionalInt.of(choice);
    }

    /** The sexes that an animal may have as far as a variable of its sex is concerned. */
    Sex sexOf(int member, int state) {
        return sexes[member].isPresent()
                ? SEXES.get(state)
                : members.all().get(member).sex().orElse(Sex.FEMALE);
    }

    private void declare(int member, Evidence evidence) {
        Optional<Sex> known = members.all().get(member).sex();
        boolean matters = known.isEmpty()
                && (evidence.readsSex()
                        || heredity.stream().anyMatch(Heredity::dependsOnSex)
                        || units.stream().flatMap(unit -> unit.loci().stream()).anyMatch(Locus::dependsOnSex));
        sexes[member] = matters ? OptionalInt.of(graph.variable(2)) : OptionalInt.empty();
        for (int u = 0; u < units.size(); u++) {
            carried[member][u] = graph.variable(states(member, u));
        }
    }

    /** How many states an animal has at a unit. */
    int states(int member, int unit) {
        Heredity here = heredity.get(unit);
        return splits(member, unit) ? here.states(Sex.FEMALE) + here.states(Sex.MALE) : here.states(sexOf(member, 0));
    }

    /** Whether the states of an animal at a unit are those of females and then those of males. */
    boolean splits(int member, int unit) {
        return sexes[member].isPresent() && heredity.get(unit).dependsOnSex();
    }

    private Population population(Member member) {
        String id = member.population()
                .orElseThrow(() -> new IllegalArgumentException("an animal without parents has no population"));
        return Objects.requireNonNull(model.populations().get(id), id);
    }

    private void founder(int member) {
        Member founder = members.all().get(member);
        for (int u = 0; u < units.size(); u++) {
            Heredity here = heredity.get(u);
            if (splits(member, u)) {
                int females = here.states(Sex.FEMALE);
                double[] table = new double[2 * states(member, u)];
                System.arraycopy(prior(here, Sex.FEMALE, founder), 0, table, 0, females);
                System.arraycopy(
                        prior(here, Sex.MALE, founder), 0, table, states(member, u) + females, here.states(Sex.MALE));
                graph.add(table, sexes[member].orElseThrow(), carried[member][u]);
            } else {
                graph.add(prior(here, sexOf(member, 0), founder), carried[member][u]);
            }
        }
        if (sexes[member].isPresent()) {
            double[] shares = {1, 1};
            for (int s = 0; s < 2 && weighted; s++) {
                for (Heredity here : heredity) {
                    shares[s] *= here.founderShare(SEXES.get(s), population(founder));
                }
            }
            double total = shares[0] + shares[1];
            graph.add(
                    weighted ? new double[] {shares[0] / total, shares[1] / total} : shares,
                    sexes[member].orElseThrow());
        }
    }

    private double[] prior(Heredity here, Sex sex, Member founder) {
        if (!weighted) {
            return here.living(sex);
        }
        Population population = population(founder);
        return table(List.of("founder", here, sex, population.id()), () -> here.founders(sex, population));
    }

    private double[] table(List<Object> key, Supplier<double[]> make) {
        return tables.computeIfAbsent(key, ignored -> {
            double[] made = make.get();
            if (!weighted) {
                for (int i = 0; i < made.length; i++) {
                    made[i] = made[i] > 0 ? 1 : 0;
                }
            }
            return made;
        });
    }

    private void kit(int member) {
        Parents parents = members.all().get(member).parents().orElseThrow();
        for (int u = 0; u < units.size(); u++) {
            int sire = sire(parents, u);
            int dam = carried[parents.dam()][u];
            Heredity here = heredity.get(u);
            if (splits(member, u)) {
                graph.add(
                        table(List.of("kit of either sex", here), () -> ofEitherSex(here)),
                        sire,
                        dam,
                        sexes[member].orElseThrow(),
                        carried[member][u]);
            } else {
                Sex sex = sexOf(member, 0);
                graph.add(table(List.of("kit", here, sex), () -> here.kits(sex)), sire, dam, carried[member][u]);
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
            return carried[parents.sires().get(0).male()][unit];
        }
        choices.computeIfAbsent(parents.brood(), brood -> {
            int choice = graph.variable(parents.sires().size());
            graph.add(
                    parents.sires().stream()
                            .mapToDouble(one -> weighted ? one.share() : 1)
                            .toArray(),
                    choice);
            return choice;
        });
        int[] ofBrood = sires.computeIfAbsent(parents.brood(), brood -> {
            int[] none = new int[units.size()];
            Arrays.fill(none, -1);
            return none;
        });
        if (ofBrood[unit] < 0) {
            int states = heredity.get(unit).states(Sex.MALE);
            ofBrood[unit] = graph.variable(states);
            int choice = Objects.requireNonNull(choices.get(parents.brood()));
            for (int c = 0; c < parents.sires().size(); c++) {
                double[] equal = new double[parents.sires().size() * states * states];
                for (int other = 0; other < parents.sires().size(); other++) {
                    for (int cell = 0; cell < states * states; cell++) {
                        boolean holds = other != c || cell / states == cell % states;
                        equal[other * states * states + cell] = holds ? 1 : 0;
                    }
                }
                graph.add(equal, choice, carried[parents.sires().get(c).male()][unit], ofBrood[unit]);
            }
        }
        return ofBrood[unit];
    }

    /** A daughter or a son, as far as more of one sex than of the other live; where the sex is known that tells of the parents. */
    private void sexOfKit(int member, Parents parents) {
        List<Integer> differing = new ArrayList<>();
        for (int u = 0; u < units.size(); u++) {
            if (heredity.get(u).livingDependsOnSex()) {
                differing.add(u);
            }
        }
        if (differing.isEmpty()) {
            if (sexes[member].isPresent()) {
                graph.add(weighted ? new double[] {0.5, 0.5} : new double[] {1, 1}, sexes[member].orElseThrow());
            } else if (weighted && members.all().get(member).sex().isPresent()) {
                // as many daughters as sons
                double[] half = new double[states(member, 0)];
                Arrays.fill(half, 0.5);
                graph.add(half, carried[member][0]);
            }
            return;
        }
        boolean open = sexes[member].isPresent();
        int[] variables = new int[2 * differing.size() + (open ? 1 : 0)];
        double[] daughters = {1};
        double[] sons = {1};
        for (int i = 0; i < differing.size(); i++) {
            int u = differing.get(i);
            variables[2 * i] = sire(parents, u);
            variables[2 * i + 1] = carried[parents.dam()][u];
            daughters = times(daughters, heredity.get(u).livingShare(Sex.FEMALE));
            sons = times(sons, heredity.get(u).livingShare(Sex.MALE));
        }
        double[] table = new double[daughters.length * (open ? 2 : 1)];
        for (int pair = 0; pair < daughters.length; pair++) {
            double total = daughters[pair] + sons[pair];
            double daughter = total == 0 ? 0 : daughters[pair] / total;
            double son = total == 0 ? 0 : sons[pair] / total;
            if (open) {
                table[2 * pair] = weigh(daughter);
                table[2 * pair + 1] = weigh(son);
            } else {
                table[pair] = weigh(sexOf(member, 0) == Sex.FEMALE ? daughter : son);
            }
        }
        if (open) {
            variables[variables.length - 1] = sexes[member].orElseThrow();
        }
        graph.add(table, variables);
    }

    private double weigh(double chance) {
        return weighted ? chance : chance > 0 ? 1 : 0;
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
        if (!weighted || !parents.perKit() || parents.isCertain()) {
            return;
        }
        List<Integer> losing = new ArrayList<>();
        for (int u = 0; u < units.size(); u++) {
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
                variables[i * (males + 1) + c] = carried[member][losing.get(i)];
                sizes[i * (males + 1) + c] = states(member, losing.get(i));
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
        for (Sex sex : SEXES) {
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

    /** The sex of an animal in a state at a unit. */
    Sex sexAt(int member, int unit, int state) {
        boolean split = splits(member, unit);
        return split && state >= heredity.get(unit).states(Sex.FEMALE)
                ? Sex.MALE
                : split ? Sex.FEMALE : sexOf(member, 0);
    }

    /** The genotype of an animal in a state at one locus of a unit. */
    AllelePair pair(int member, int unit, int state, int locus) {
        Heredity here = heredity.get(unit);
        Sex sex = sexAt(member, unit, state);
        int from = splits(member, unit) && sex == Sex.MALE ? here.states(Sex.FEMALE) : 0;
        return here.pair(sex, state - from, locus);
    }
}
