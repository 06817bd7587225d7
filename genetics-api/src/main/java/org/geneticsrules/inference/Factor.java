package org.geneticsrules.inference;

/**
 * A weight for each combination of the states of some variables.
 *
 * <p>Tables are laid out with the last variable changing fastest, and may be shared between factors that differ in their variables only:
 * all kits of one sex inherit a locus by one table.
 *
 * @param variables numbers of the variables, all different
 * @param table the weights, not to be modified
 */
@SuppressWarnings("ArrayRecordComponent") // read in the inner loops, never compared
record Factor(int[] variables, double[] table) {

    static Factor of(double[] table, int... variables) {
        return new Factor(variables, table);
    }
}
