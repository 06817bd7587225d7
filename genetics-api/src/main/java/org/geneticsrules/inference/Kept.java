package org.geneticsrules.inference;

import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;

/** Which records of a pedigree are taken to be true; all others are looked at as if nobody had made them. */
interface Kept {

    /** All of them. */
    Kept ALL = new Kept() {
        @Override
        public boolean concerns(String individual) {
            return true;
        }

        @Override
        public Individual recorded(Individual individual) {
            return individual;
        }

        @Override
        public boolean dam(Litter litter) {
            return true;
        }

        @Override
        public boolean sires(Litter litter) {
            return true;
        }
    };

    /** Whether an individual is looked at; if it is not, no record that is kept may mention it. */
    boolean concerns(String individual);

    /** What is left of the records of an individual. */
    Individual recorded(Individual individual);

    /** Whether the dam is who is recorded; if not, she is an animal of whom nothing is known. */
    boolean dam(Litter litter);

    /** Whether the sires are those recorded; if not, there are as many males of whom nothing is known. */
    boolean sires(Litter litter);
}
