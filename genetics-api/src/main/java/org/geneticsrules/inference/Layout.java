package org.geneticsrules.inference;

import com.google.common.collect.ImmutableList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.trait.Sex;

/**
 * Which variables stand for what, of some units that have to be looked at together: what each animal carries at each unit, its sex where
 * that is not known and makes a difference, and which male sired a brood.
 *
 * <p>An animal of unknown sex has, at units where the sexes differ, the states of females first and those of males after them.
 */
final class Layout {

    static final List<Sex> SEXES = ImmutableList.of(Sex.FEMALE, Sex.MALE);

    private static final int NONE = -1;

    private final Members members;
    private final List<Heredity> heredity;
    private final boolean sexed;

    /** For each unit and animal, the number of its variable. */
    private final int[][] carried;

    private final int[] sexes;
    private final int[] choices;

    /**
     * Starts without variables.
     *
     * @param members the animals
     * @param heredity the units
     * @param sexed whether the sex of animals matters where it is not known
     */
    Layout(Members members, List<Heredity> heredity, boolean sexed) {
        this.members = members;
        this.heredity = ImmutableList.copyOf(heredity);
        this.sexed = sexed;
        this.carried = new int[heredity.size()][0];
        this.sexes = none(sexed ? members.all().size() : 0);
        this.choices = none(members.broods());
    }

    private static int[] none(int count) {
        int[] all = new int[count];
        Arrays.fill(all, NONE);
        return all;
    }

    /** Gives an animal its variables. */
    void declare(int member, FactorGraph graph) {
        if (sexed && members.all().get(member).sex().isEmpty()) {
            sexes[member] = graph.variable(2);
        }
        for (int u = 0; u < heredity.size(); u++) {
            if (carried[u].length == 0) {
                carried[u] = none(members.all().size()); // few animals have variables where all is looked at otherwise
            }
            carried[u][member] = graph.variable(states(member, u));
        }
    }

    /** Gives a brood a variable of who sired it, if it has none yet. */
    void choose(int brood, int candidates, FactorGraph graph) {
        choices[brood] = graph.variable(candidates);
    }

    Members members() {
        return members;
    }

    List<Heredity> heredity() {
        return heredity;
    }

    List<Locus> loci(int unit) {
        return heredity.get(unit).unit().loci();
    }

    /** The variable of what an animal carries at a unit; -1 if it has none. */
    int carried(int member, int unit) {
        return carried[unit].length == 0 ? NONE : carried[unit][member];
    }

    /** The variable of an animal's sex, female before male, if it is not known and makes a difference. */
    OptionalInt sex(int member) {
        return isSexed(member) ? OptionalInt.of(sexes[member]) : OptionalInt.empty();
    }

    /** The variable of which candidate sired a brood, if that is uncertain. */
    OptionalInt choice(int brood) {
        return choices[brood] == NONE ? OptionalInt.empty() : OptionalInt.of(choices[brood]);
    }

    /** The sex of an animal in a state of the variable of its sex, or its known sex; females stand for both where it does not matter. */
    Sex sexOf(int member, int state) {
        return isSexed(member)
                ? SEXES.get(state)
                : members.all().get(member).sex().orElse(Sex.FEMALE);
    }

    private boolean isSexed(int member) {
        return sexed && sexes[member] != NONE;
    }

    /** How many states an animal has at a unit. */
    int states(int member, int unit) {
        Heredity here = heredity.get(unit);
        return splits(member, unit) ? here.states(Sex.FEMALE) + here.states(Sex.MALE) : here.states(sexOf(member, 0));
    }

    /** Whether the states of an animal at a unit are those of females and then those of males. */
    boolean splits(int member, int unit) {
        return isSexed(member) && heredity.get(unit).dependsOnSex();
    }

    /** The sex of an animal in a state at a unit. */
    Sex sexAt(int member, int unit, int state) {
        if (!splits(member, unit)) {
            return sexOf(member, 0);
        }
        return state < heredity.get(unit).states(Sex.FEMALE) ? Sex.FEMALE : Sex.MALE;
    }

    /** The genotype of an animal in a state at one locus of a unit. */
    AllelePair pair(int member, int unit, int state, int locus) {
        Sex sex = sexAt(member, unit, state);
        return heredity.get(unit).pair(sex, state - before(member, unit, sex), locus);
    }

    /** What each haplotype of a state has at two loci of a unit, as numbers in ascending order. */
    int[] strands(int member, int unit, int state, int first, int second) {
        Sex sex = sexAt(member, unit, state);
        return heredity.get(unit).strands(sex, state - before(member, unit, sex), first, second);
    }

    /** How many states come before those of a sex. */
    private int before(int member, int unit, Sex sex) {
        return splits(member, unit) && sex == Sex.MALE ? heredity.get(unit).states(Sex.FEMALE) : 0;
    }
}
