package org.geneticsrules.expression;

import java.math.BigInteger;
import java.util.Arrays;

/** Products of vectors and matrices of whole numbers. */
final class Matrices {

    private Matrices() {}

    static BigInteger[] times(BigInteger[] row, BigInteger[][] matrix) {
        BigInteger[] product = new BigInteger[matrix[0].length];
        Arrays.fill(product, BigInteger.ZERO);
        for (int i = 0; i < row.length; i++) {
            if (row[i].signum() != 0) {
                for (int j = 0; j < product.length; j++) {
                    if (matrix[i][j].signum() != 0) {
                        product[j] = product[j].add(row[i].multiply(matrix[i][j]));
                    }
                }
            }
        }
        return product;
    }

    static BigInteger[][] times(BigInteger[][] first, BigInteger[][] second) {
        BigInteger[][] product = new BigInteger[first.length][];
        Arrays.setAll(product, i -> times(first[i], second));
        return product;
    }

    static BigInteger sum(BigInteger[] row) {
        BigInteger sum = BigInteger.ZERO;
        for (BigInteger entry : row) {
            sum = sum.add(entry);
        }
        return sum;
    }

    static BigInteger[] times(BigInteger[] row, BigInteger factor) {
        if (factor.equals(BigInteger.ONE)) {
            return row;
        }
        BigInteger[] product = new BigInteger[row.length];
        Arrays.setAll(product, i -> row[i].multiply(factor));
        return product;
    }
}
