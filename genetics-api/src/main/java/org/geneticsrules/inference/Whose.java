package org.geneticsrules.inference;

import java.util.Arrays;

/** For each variable of a layout, whose it is and what it is of. */
final class Whose {

    private static final int NOBODY = -1;

    private final int[] member;
    private final int[] unit;

    /**
     * Reads a layout backwards.
     *
     * @param layout the layout
     * @param variables how many variables there are
     */
    Whose(Layout layout, int variables) {
        this.member = new int[variables];
        this.unit = new int[variables];
        Arrays.fill(member, NOBODY);
        Arrays.fill(unit, NOBODY);
        for (int m = 0; m < layout.members().all().size(); m++) {
            int whose = m;
            layout.sex(m).ifPresent(variable -> member[variable] = whose);
            for (int u = 0; u < layout.heredity().size(); u++) {
                int variable = layout.carried(m, u);
                if (variable >= 0) {
                    member[variable] = m;
                    unit[variable] = u;
                }
            }
        }
    }

    /** The number of the animal that a variable is of; -1 if it says who a sire is, or what a sire carries who is not certain. */
    int member(int variable) {
        return member[variable];
    }

    /** The unit of which a variable says what an animal carries; -1 if it says something else. */
    int unit(int variable) {
        return unit[variable];
    }
}
